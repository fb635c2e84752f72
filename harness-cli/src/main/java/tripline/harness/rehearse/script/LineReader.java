package tripline.harness.rehearse.script;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import tripline.job.End;
import tripline.link.MarkKind;

/** Reads a line: the verb, what it needs, and nothing else. */
public final class LineReader {
  /** A word; quotation marks hold one together that has spaces. */
  private static final Pattern WORD = Pattern.compile("\"[^\"]*\"|\\S+");

  private static final int MOST_TEXT_BYTES = 120;
  private static final double DAY_S = 86_400;

  private final Collection<String> cams;
  private final Deque<String> words = new ArrayDeque<>();

  /**
   * @param cams names of the cams that can be adjusted
   */
  public LineReader(Collection<String> cams) {
    this.cams = List.copyOf(cams);
  }

  /**
   * What a line says; empty for a blank line or a comment.
   *
   * @throws BadLine if it says nothing that can be done
   */
  public Optional<Action> read(String text) throws BadLine {
    String said = text.strip();
    if (said.isEmpty() || said.startsWith("#")) {
      return Optional.empty();
    }
    words.clear();
    WORD.matcher(said).results().forEach(w -> words.add(w.group().replace("\"", "")));
    Action action = action();
    if (!words.isEmpty()) {
      throw new BadLine("\"%s\" is too much, expected the end of the line".formatted(words.peek()));
    }
    return Optional.of(action);
  }

  private Action action() throws BadLine {
    String verb = words.remove();
    return switch (verb.toLowerCase(Locale.ROOT)) {
      case "crank" -> crank();
      case "touch" -> new Action.Crank(end(), OptionalDouble.empty(), rate());
      case "run" -> new Action.Run(end());
      case "stop" -> new Action.Halt();
      case "adjust" -> new Action.Adjust(cam(), number("TURNS", -1000, 1000));
      case "set" -> new Action.SetCam(cam());
      case "press" -> press();
      case "wait" -> new Action.Pause(number("SECONDS", 0, DAY_S));
      case "await" -> new Action.Await(host());
      case "after" -> later();
      case "unplug" -> new Action.Unplug();
      case "plug" -> new Action.Plug();
      case "errors" -> new Action.BitErrors(number("RATE", 0, 0.1));
      case "stall" -> new Action.Stall(number("SECONDS", 0, DAY_S));
      case "lose" -> new Action.Lose(count());
      case "overrun" -> new Action.Overrun(count());
      case "clock" -> new Action.StepClock(number("SECONDS", -DAY_S, DAY_S));
      case "restart" -> new Action.Restart();
      case "truth" -> new Action.SayTruth();
      case "where" -> new Action.SayWhere();
      case "help" -> new Action.SayHelp();
      case "quit" -> new Action.Quit();
      default -> throw new BadLine("\"%s\" is no word of this, try help".formatted(verb));
    };
  }

  private Action crank() throws BadLine {
    if ("to".equals(words.peek())) {
      words.remove();
      return new Action.CrankTo(number("X", 0, 10_000), rate());
    }
    End toward = end();
    boolean turns = !words.isEmpty() && !"at".equals(words.peek());
    return new Action.Crank(
        toward,
        turns ? OptionalDouble.of(number("TURNS", 0, 10_000)) : OptionalDouble.empty(),
        rate());
  }

  private OptionalDouble rate() throws BadLine {
    if (!"at".equals(words.peek())) {
      return OptionalDouble.empty();
    }
    words.remove();
    return OptionalDouble.of(number("RATE", 0.01, 5));
  }

  private Action press() throws BadLine {
    String kind = next("closed-stop, open-stop, adjusted or note");
    String after = String.join(" ", words);
    words.clear();
    if (after.getBytes(StandardCharsets.UTF_8).length > MOST_TEXT_BYTES
        || after.chars().anyMatch(Character::isISOControl)) {
      throw new BadLine(
          "the text is expected to have at most %d bytes and no control characters"
              .formatted(MOST_TEXT_BYTES));
    }
    return new Action.Press(
        switch (kind) {
          case "closed-stop" -> MarkKind.CLOSED_STOP;
          case "open-stop" -> MarkKind.OPEN_STOP;
          case "adjusted" -> MarkKind.ADJUSTED;
          case "note" -> MarkKind.NOTE;
          default ->
              throw new BadLine(
                  "\"%s\", expected closed-stop, open-stop, adjusted or note".formatted(kind));
        },
        after);
  }

  private Action later() throws BadLine {
    double seconds = number("SECONDS", 0, DAY_S);
    if (words.isEmpty()) {
      throw new BadLine("the line ends, expected what to do then");
    }
    Action then = action();
    if (then instanceof Action.Pause || then instanceof Action.Await) {
      throw new BadLine("to wait later makes no sense, expected something to do");
    }
    return new Action.Later(seconds, then);
  }

  private Action.Host host() throws BadLine {
    String what = next("start or stop");
    return switch (what) {
      case "start" -> Action.Host.START;
      case "stop" -> Action.Host.STOP;
      default -> throw new BadLine("\"%s\", expected start or stop".formatted(what));
    };
  }

  private End end() throws BadLine {
    String word = next("open or closed");
    return switch (word) {
      case "open" -> End.OPEN;
      case "closed", "close" -> End.CLOSED;
      default -> throw new BadLine("\"%s\", expected open or closed".formatted(word));
    };
  }

  private String cam() throws BadLine {
    String known = String.join(", ", cams);
    String name = next("a cam: " + known);
    if (!cams.contains(name)) {
      throw new BadLine("no cam \"%s\", expected one of %s".formatted(name, known));
    }
    return name;
  }

  private int count() throws BadLine {
    double n = number("N", 1, 60_000);
    if (n != Math.rint(n)) {
      throw new BadLine("N is not whole");
    }
    return (int) n;
  }

  private double number(String what, double least, double most) throws BadLine {
    String word = next(what);
    double value;
    try {
      value = Double.parseDouble(word);
    } catch (NumberFormatException e) {
      value = Double.NaN;
    }
    if (!(value >= least && value <= most)) {
      throw new BadLine(
          "%s is \"%s\", expected a number from %s to %s"
              .formatted(what, word, figure(least), figure(most)));
    }
    return value;
  }

  private static String figure(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }

  private String next(String expected) throws BadLine {
    String word = words.poll();
    if (word == null) {
      throw new BadLine("the line ends, expected " + expected);
    }
    return word;
  }
}
