package tripline.harness.watch;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tripline.harness.terminal.TerminalSize;

/**
 * A terminal that knows just enough to show what a screen would show: text, cursor addressing,
 * erasing to the end of line or screen, attributes, private modes. Anything else it is sent fails
 * the test.
 */
final class TinyTerminal extends OutputStream {
  private static final Pattern SEQUENCE = Pattern.compile("\u001b\\[(\\?)?([0-9;]*)([A-Za-z])");

  final List<String> writes = new ArrayList<>();
  final TreeSet<Integer> modes = new TreeSet<>(List.of(7, 25));
  private final int columns;
  private final String[][] cells;
  private int row;
  private int column;
  int clears;

  TinyTerminal(TerminalSize size) {
    columns = size.columns();
    cells = new String[size.rows()][columns];
    for (String[] line : cells) {
      Arrays.fill(line, "?");
    }
  }

  @Override
  public void write(int b) {
    throw new AssertionError("written byte by byte");
  }

  @Override
  public void write(byte[] bytes, int offset, int length) {
    take(new String(bytes, offset, length, StandardCharsets.UTF_8));
  }

  private void take(String text) {
    writes.add(text);
    Matcher sequence = SEQUENCE.matcher(text);
    int at = 0;
    while (at < text.length()) {
      if (text.charAt(at) == '\u001b') {
        if (!sequence.find(at) || sequence.start() != at) {
          throw new AssertionError("not a sequence at " + at + " of " + text);
        }
        obey(sequence.group(1) != null, sequence.group(2), sequence.group(3).charAt(0));
        at = sequence.end();
      } else {
        int c = text.codePointAt(at);
        if (c < ' ') {
          throw new AssertionError("control character " + c);
        }
        print(Character.toString(c));
        at += Character.charCount(c);
      }
    }
  }

  private void print(String sign) {
    cells[row][column] = sign;
    // Without wrapping the cursor stays in the last column.
    column = Math.min(column + 1, columns - 1);
  }

  private void obey(boolean isPrivate, String parameters, char command) {
    switch (command) {
      case 'H' -> {
        String[] place = parameters.isEmpty() ? new String[] {"1", "1"} : parameters.split(";");
        row = Integer.parseInt(place[0]) - 1;
        column = Integer.parseInt(place[1]) - 1;
      }
      case 'K' -> {
        Arrays.fill(cells[row], column, columns, " ");
      }
      case 'J' -> {
        int from = parameters.equals("2") ? 0 : row;
        clears += parameters.equals("2") ? 1 : 0;
        for (int r = from; r < cells.length; r++) {
          Arrays.fill(cells[r], " ");
        }
      }
      case 'm' -> {}
      case 'h', 'l' -> {
        if (!isPrivate) {
          throw new AssertionError("mode " + parameters);
        }
        if (command == 'h') {
          modes.add(Integer.valueOf(parameters));
        } else {
          modes.remove(Integer.valueOf(parameters));
        }
      }
      default -> throw new AssertionError("sequence that ends in " + command);
    }
  }

  /** What it shows, line by line. */
  List<String> shown() {
    return Arrays.stream(cells).map(line -> String.join("", line)).toList();
  }
}
