package tripline.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.result.Result.Measured;
import tripline.result.Result.PartResult;

/** Estimates as the result writes them; what is absent is null there. */
final class Figures {
  private Figures() {}

  static Measured measured(Estimate figure) {
    return measured(figure.value(), figure);
  }

  /** A value with the uncertainty of another figure: a trip point with that of its deviation. */
  static Measured measured(double value, Estimate uncertainty) {
    List<PartResult> parts = new ArrayList<>();
    for (Map.Entry<String, Double> part : uncertainty.budget().entrySet()) {
      parts.add(new PartResult(part.getKey(), part.getValue(), shape(uncertainty, part.getKey())));
    }
    return new Measured(value, uncertainty.u(), uncertainty.expanded95(), List.copyOf(parts));
  }

  private static String shape(Estimate figure, String name) {
    TreeSet<String> shapes = new TreeSet<>();
    for (Part part : figure.parts()) {
      if (part.name().equals(name)) {
        shapes.add(part.shape().name().toLowerCase(Locale.ROOT));
      }
    }
    return String.join("+", shapes);
  }

  static @Nullable Measured measured(Optional<Estimate> figure) {
    return figure.map(Figures::measured).orElse(null);
  }

  static @Nullable Double value(Optional<Estimate> figure) {
    return figure.map(Estimate::value).orElse(null);
  }

  static @Nullable Double u(Optional<Estimate> figure) {
    return figure.map(Estimate::u).orElse(null);
  }

  static @Nullable Double number(OptionalDouble number) {
    return number.isPresent() ? number.getAsDouble() : null;
  }
}
