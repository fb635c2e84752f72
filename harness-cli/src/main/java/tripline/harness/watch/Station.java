package tripline.harness.watch;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.harness.report.Glyphs;
import tripline.harness.report.Ink;
import tripline.harness.report.TextStyle;
import tripline.harness.terminal.Keyboard;

/**
 * Where a watch is shown and steered.
 *
 * @param screen a terminal to draw on; empty: a line an event
 * @param keyboard null: no keys
 * @param out where events and answers go
 * @param errors where all else goes while there is no screen
 * @param glyphs signs to draw with
 */
public record Station(
    Optional<Screen> screen,
    @Nullable Keyboard keyboard,
    PrintWriter out,
    PrintWriter errors,
    Glyphs glyphs) {
  /** Whether the keyboard is read. */
  public enum Keys {
    READ,
    LEFT_ALONE
  }

  /** The process's own terminal, if it has one that can be drawn on. */
  public static Station ofProcess(Keys keys, TextStyle style, PrintWriter out, PrintWriter errors) {
    boolean drawable = isDrawable(System.getenv(), System.getProperty("tripline.terminal"));
    Look.Colour colour = style.ink() == Ink.PLAIN ? Look.Colour.NO : Look.Colour.YES;
    return new Station(
        drawable
            ? Optional.of(
                new Screen(
                    new FileOutputStream(FileDescriptor.out), StandardCharsets.UTF_8, colour))
            : Optional.empty(),
        keys == Keys.READ ? Keyboard.ofProcess() : null,
        out,
        errors,
        style.glyphs());
  }

  /**
   * @param environment {@code TERM} that is missing or {@code dumb} knows no cursor
   * @param terminal what the launcher says of standard output; null where nobody did, and then
   *     there is none
   */
  static boolean isDrawable(Map<String, String> environment, @Nullable String terminal) {
    String term = environment.getOrDefault("TERM", "");
    return Boolean.parseBoolean(terminal) && !term.isEmpty() && !term.equals("dumb");
  }
}
