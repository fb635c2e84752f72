package tripline.harness.watch;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import tripline.harness.report.Glyphs;
import tripline.harness.terminal.TerminalSize;

/**
 * The screen at one moment, laid out for the room there is: as many rows as asked for, each exactly
 * as wide.
 *
 * @param lines from top to bottom
 */
record Frame(List<Line> lines) {
  /** Lines longer than this are hard to read, and the rest of a wide screen stays empty. */
  static final int WIDEST = 100;

  Frame {
    lines = List.copyOf(lines);
  }

  /** Lays out a view. */
  static Frame of(View view, TerminalSize size, Glyphs glyphs) {
    int columns = Math.min(size.columns(), WIDEST);
    List<Block> blocks = new Blocks(view, columns, new Speech(glyphs)).all();
    return new Frame(
        laid(blocks, size.rows()).stream()
            .map(line -> line.fit(columns, glyphs).and(" ".repeat(size.columns() - columns)))
            .toList());
  }

  /** Rows by need, then a free line between blocks, then the rest to whoever fills it. */
  private static List<Line> laid(List<Block> blocks, int rows) {
    int[] given = share(blocks, rows);
    int left = rows - IntStream.of(given).sum();
    List<Line> lines = new ArrayList<>();
    List<Integer> shown =
        IntStream.range(0, given.length).filter(i -> given[i] > 0).boxed().toList();
    int gaps = Math.min(left, shown.size() - 1);
    int rest = left - Math.max(0, gaps);
    for (int i : shown) {
      if (!lines.isEmpty() && gaps > 0) {
        lines.add(Line.EMPTY);
        gaps--;
      }
      Block block = blocks.get(i);
      boolean fills = block.rest() == Block.Rest.FILLED;
      int height = given[i] + (fills ? rest : 0);
      rest = fills ? 0 : rest;
      List<Line> own = block.lines().subList(0, Math.min(height, block.lines().size()));
      lines.addAll(own);
      lines.addAll(Collections.nCopies(height - own.size(), Line.EMPTY));
    }
    lines.addAll(Collections.nCopies(rows - lines.size(), Line.EMPTY));
    return lines;
  }

  /** Rows for every block: by rank what it would have, but for those that fill what is left. */
  private static int[] share(List<Block> blocks, int rows) {
    int[] given = new int[blocks.size()];
    int left = rows;
    List<Integer> byRank =
        IntStream.range(0, given.length)
            .boxed()
            .sorted(Comparator.comparingInt(i -> blocks.get(i).rank()))
            .toList();
    for (int i : byRank) {
      Block block = blocks.get(i);
      boolean fills = block.rest() == Block.Rest.FILLED;
      int wanted = fills ? block.least() : block.lines().size();
      given[i] = block.least() <= left ? Math.min(left, wanted) : 0;
      left -= given[i];
    }
    return given;
  }
}
