package tripline.harness.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tripline.harness.report.Columns;
import tripline.harness.report.FigureText;
import tripline.harness.report.TravelScale;
import tripline.job.Direction;
import tripline.job.End;
import tripline.live.Whereabouts;
import tripline.measure.Estimate;
import tripline.result.Result;
import tripline.result.Result.Backoff;

/** The parts of the screen, top to bottom. */
record Blocks(View view, int columns, Speech speech) {
  /** Title, what to do, and as much of the reasons as most steps give; always the same. */
  private static final int GUIDE_LINES = 5;

  private static final int GUIDE = 1;
  private static final int POSITION = 2;
  private static final int HEAD = 3;
  private static final int CONTACTS = 4;
  private static final int KEYS = 5;
  private static final int CHANGES = 6;
  private static final int SO_FAR = 7;
  private static final int TARGETS = 8;

  List<Block> all() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(head());
    Optional<View.Seen> seen = view.seen();
    if (seen.isEmpty()) {
      blocks.add(
          new Block(
              GUIDE,
              1,
              Block.Rest.FILLED,
              List.of(
                  bar("WAITING FOR THE FIRST SAMPLE"),
                  Line.of(" " + speech.safe(view.link().state())))));
    } else {
      blocks.add(guide(seen.get()));
      blocks.add(position(seen.get()));
      Tables tables = new Tables(seen.get(), columns, speech);
      if (tables.fitSideBySide()) {
        blocks.add(table(CONTACTS, tables.both()));
      } else {
        blocks.add(table(CONTACTS, tables.contacts()));
        blocks.add(table(TARGETS, tables.targets()));
      }
      List<Line> changes = new Changes(seen.get().answer().result(), speech).lines();
      blocks.add(new Block(CHANGES, Math.min(2, changes.size()), Block.Rest.FILLED, changes));
      blocks.add(soFar(seen.get().answer().result()));
    }
    blocks.add(Block.line(KEYS, keys()));
    return blocks;
  }

  private static Block table(int rank, List<Line> lines) {
    return Block.of(rank, Math.min(2, lines.size()), lines);
  }

  private Line bar(String text) {
    return Line.of(" " + text, Look.BAR);
  }

  private Block head() {
    View.Link link = view.link();
    String tag = speech.safe(view.sheet().job().tag());
    String what = speech.safe(view.sheet().job().description());
    long s = Math.max(0, (long) link.elapsedS());
    String clock = String.format(Locale.ROOT, "%d:%02d:%02d", s / 3600, s / 60 % 60, s % 60);
    Line rate =
        link.state().isEmpty()
            ? Line.of(Speech.decimals(link.rowsPerS(), 0) + " rows/s")
            : Line.of(" " + speech.safe(link.state()) + " ", Look.BAR);
    String lost = link.lost() > 0 ? "  lost " + link.lost() : "";
    String kept = link.kept().map(k -> "  kept in " + speech.safe(k)).orElse("  not kept");
    Line right = Line.of(speech.safe(link.port()) + "  ").and(rate).and(lost + kept + "  " + clock);
    int room = columns - 1 - Columns.width(right.text());
    Line line = Line.of(tag, Look.STRONG).and("  " + what);
    // The first line names the valve, and how the line does where both fit; else there are two.
    if (room >= Columns.width(tag) + 2) {
      return Block.line(HEAD, line.fit(room, speech.glyphs()).and(" ").and(right));
    }
    return Block.of(HEAD, 1, List.of(line, right));
  }

  private Block guide(View.Seen seen) {
    Words words = Words.of(seen.step(), seen.where(), seen.answer().result(), speech.glyphs());
    List<Line> lines = new ArrayList<>();
    lines.add(bar(words.title()));
    for (String act : Columns.wrap(words.act(), Math.max(1, columns - 2))) {
      lines.add(Line.of(" ").and(act, Look.ACCENT));
    }
    int least = Math.min(lines.size(), 2);
    for (String why : words.why()) {
      Columns.wrap(why, Math.max(1, columns - 2)).forEach(text -> lines.add(Line.of(" " + text)));
    }
    while (lines.size() < GUIDE_LINES) {
      lines.add(Line.EMPTY);
    }
    return Block.of(GUIDE, least, lines.subList(0, GUIDE_LINES));
  }

  private Block position(View.Seen seen) {
    if (seen.where().isEmpty()) {
      return Block.of(
          POSITION, 1, List.of(Line.of("POSITION", Look.STRONG).and("  not known"), Line.EMPTY));
    }
    Whereabouts where = seen.where().get();
    List<String> parts = new ArrayList<>();
    for (End end : End.values()) {
      Optional<Estimate> stop = seen.answer().stop(end);
      stop.ifPresent(
          s ->
              parts.add(
                  Speech.decimals(where.from(s, end), 3) + " from the " + end.word() + " stop"));
    }
    if (parts.isEmpty()) {
      parts.add(Speech.decimals(where.x(), 3) + " from where it began; no stop is known yet");
    }
    String motion = where.moving().map(Direction::word).orElse("standing");
    Line line =
        Line.of("POSITION", Look.STRONG)
            .and("  " + String.join(", ", parts), Look.STRONG)
            .and("  turns  " + motion);
    return scale(seen, where)
        .map(scale -> Block.of(POSITION, 1, List.of(line, scale)))
        .orElse(Block.of(POSITION, 1, List.of(line, Line.EMPTY)));
  }

  /** Where the drive stands on the line of travel, and where the guide wants it. */
  private Optional<Line> scale(View.Seen seen, Whereabouts where) {
    Optional<Double> span =
        Optional.ofNullable(seen.answer().result().travel().span())
            .map(Result.Measured::value)
            .or(() -> view.sheet().travel().spanTurns().stream().boxed().findFirst());
    boolean known =
        seen.answer().stop(End.CLOSED).or(() -> seen.answer().stop(End.OPEN)).isPresent();
    if (span.isEmpty() || !known || columns < TravelScale.WIDTH) {
      return Optional.empty();
    }
    List<TravelScale.Sign> signs = new ArrayList<>();
    seen.step()
        .task()
        .ifPresent(
            task ->
                task.targetX()
                    .ifPresent(x -> signs.add(new TravelScale.Sign(x, speech.glyphs().target()))));
    signs.add(new TravelScale.Sign(where.x(), speech.glyphs().here()));
    int margin = Math.max(0, Math.min(columns - TravelScale.WIDTH, 12) / 2 * 2 - 2);
    return Optional.of(
        Line.of(
            " ".repeat(margin)
                + TravelScale.of(view.sheet(), span.get()).ticks(speech.glyphs(), signs)));
  }

  private Block soFar(Result result) {
    Line line =
        Line.of("SO FAR", Look.STRONG)
            .and("  " + FigureText.word(result.decision()), Look.STRONG)
            .and("   closed end " + backoff(result.ends().closed().backoff()))
            .and("   open end " + backoff(result.ends().open().backoff()));
    return Block.line(SO_FAR, line);
  }

  private String backoff(Backoff backoff) {
    String figure =
        backoff.value() == null ? "" : FigureText.interval(backoff.value(), backoff.u95()) + " ";
    return speech.own(figure + FigureText.word(backoff.decision()));
  }

  /** What was said last, or which keys there are. */
  private Line keys() {
    String message = view.link().message();
    if (!message.isEmpty()) {
      return Line.of(" ").and(speech.safe(message), Look.STRONG);
    }
    return Line.of(" c", Look.STRONG)
        .and(" closed stop  ")
        .and("o", Look.STRONG)
        .and(" open stop  ")
        .and("a", Look.STRONG)
        .and(" adjusted  ")
        .and("n", Look.STRONG)
        .and(" note  ")
        .and("q", Look.STRONG)
        .and(" end, with the answer");
  }
}
