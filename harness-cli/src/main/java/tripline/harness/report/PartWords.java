package tripline.harness.report;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tripline.result.Result.Measured;
import tripline.result.Result.PartResult;

/** Parts of an uncertainty in words. */
public final class PartWords {
  /** A part so much smaller than the whole changes no digit of it. */
  private static final double NEGLIGIBLE = 0.01;

  private PartWords() {}

  /** Where a part comes from; a name without words is given as it is. */
  public static String of(PartResult part) {
    String name = part.name();
    int colon = name.indexOf(':');
    String kind = colon < 0 ? name : name.substring(0, colon);
    return switch (kind) {
      case "stop" -> colon < 0 ? "hard stop" : name.substring(colon + 1) + " stop";
      case "bracket" -> "time of change";
      case "bounce" -> "bounce unseen";
      case "gap" -> "readings missing";
      case "repeat", "scatter" -> "stroke to stroke";
      case "play", "play-assumed" -> "lost motion";
      case "registration" -> "registration";
      default -> kind;
    };
  }

  /** Parts with their standard uncertainties, largest first; those that change nothing left out. */
  public static String list(@Nullable Measured figure) {
    if (figure == null || figure.parts().isEmpty()) {
      return "-";
    }
    List<PartResult> parts =
        figure.parts().stream()
            .filter(p -> Math.abs(p.u()) > NEGLIGIBLE * figure.u())
            .sorted(Comparator.comparingDouble((PartResult p) -> Math.abs(p.u())).reversed())
            .toList();
    return parts.stream()
        .map(p -> of(p) + " " + FigureText.uncertainty(Math.abs(p.u())))
        .collect(Collectors.joining(", "));
  }
}
