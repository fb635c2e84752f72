package tripline.harness.report.drawing;

import tripline.harness.report.FigureText;
import tripline.job.End;
import tripline.result.Result.Backoff;

/**
 * One turn of the handwheel, seen from the front, the hard stop at the top. Turning back from the
 * closed stop goes anticlockwise, from the open stop clockwise (<em>common practice</em>: clockwise
 * closes).
 */
final class Dial {
  private static final double HEIGHT = 236;
  private static final double X = 122;
  private static final double Y = 118;
  private static final double RIM = 86;
  private static final double BAND = 70;
  private static final double HUB = 34;

  private final End end;
  private final Backoff backoff;
  private final Svg svg;

  private Dial(String id, End end, Backoff backoff) {
    this.end = end;
    this.backoff = backoff;
    this.svg = new Svg(id, HEIGHT, "Handwheel at the " + end.word() + " end", words());
  }

  static String draw(String id, End end, Backoff backoff) {
    Dial dial = new Dial(id, end, backoff);
    dial.wheel();
    dial.target();
    dial.measured();
    dial.stop();
    dial.legend();
    return dial.svg.toString();
  }

  private String words() {
    String measured =
        backoff.value() == null
            ? "not measured"
            : FigureText.interval(backoff.value(), backoff.u95())
                + " turns, "
                + FigureText.degrees(backoff.value(), backoff.u95());
    return "Backoff from the %s stop: target %s turns, measured %s; %s."
        .formatted(
            end.word(),
            FigureText.target(backoff.target(), backoff.tolerance()),
            measured,
            FigureText.word(backoff.decision()));
  }

  private void wheel() {
    svg.circle(X, Y, RIM)
        .fill(Palette.PAPER)
        .stroke(Palette.INK, 1.5)
        .data("role", "rim")
        .data("sense", sense());
    for (int degrees = 10; degrees < 360; degrees += 10) {
      double turn = degrees / 360.0;
      double inner = RIM - (degrees % 90 == 0 ? 9 : degrees % 30 == 0 ? 6 : 3);
      svg.line(x(turn, inner), y(turn, inner), x(turn, RIM), y(turn, RIM)).stroke(Palette.MID, 0.8);
    }
    for (int degrees = 90; degrees < 360; degrees += 90) {
      double turn = degrees / 360.0;
      double side = Math.rint(x(turn, 1) - X);
      String anchor = side < 0 ? "end" : side > 0 ? "start" : "middle";
      svg.text(
              x(turn, RIM + (side == 0 ? 14 : 8)),
              y(turn, RIM + 14) + 3.5,
              anchor,
              9.5,
              degrees + "°")
          .fill(Palette.DARK);
    }
  }

  private void target() {
    double low = backoff.target() - backoff.tolerance();
    double high = backoff.target() + backoff.tolerance();
    svg.path(segment(low, high, BAND, RIM))
        .fill(Palette.LIGHT)
        .stroke(Palette.DARK, 1)
        .data("mark", "band")
        .data("from", low)
        .data("to", high);
    svg.line(
            x(backoff.target(), BAND),
            y(backoff.target(), BAND),
            x(backoff.target(), RIM),
            y(backoff.target(), RIM))
        .stroke(Palette.INK, 1)
        .dashed("3 2");
  }

  private void measured() {
    Double value = backoff.value();
    if (value == null) {
      svg.text(X, Y + 3, "middle", 10, "not measured");
      return;
    }
    double half = backoff.u95() == null ? 0 : backoff.u95();
    svg.path(segment(value - half, value + half, HUB, RIM))
        .fill(Palette.ACCENT)
        .set("fill-opacity", 0.25)
        .data("mark", "interval")
        .data("from", value - half)
        .data("to", value + half);
    svg.line(x(value, HUB), y(value, HUB), x(value, RIM + 5), y(value, RIM + 5))
        .stroke(Palette.ACCENT, 2.2)
        .data("mark", "backoff")
        .data("turns", value);
    svg.text(X, Y - 2, "middle", 15, FigureText.value(value, half)).set("font-weight", "bold");
    svg.text(X, Y + 11, "middle", 9, "turns");
  }

  private void stop() {
    svg.path(Svg.format("M%.2f %.2fl-6 -11h12z", X, Y - RIM)).fill(Palette.INK);
    svg.text(X, Y - RIM - 15, "middle", 10, end.word() + " stop").set("font-weight", "bold");
  }

  private void legend() {
    double x = 246;
    double y = 62;
    svg.rect(x, y - 9, 10, 10).fill(Palette.LIGHT).stroke(Palette.DARK, 1);
    svg.text(x + 16, y, "start", 10, "target");
    svg.text(x, y + 15, "start", 10, FigureText.target(backoff.target(), backoff.tolerance()));
    svg.text(x, y + 28, "start", 10, FigureText.degreesOf(backoff.target(), backoff.tolerance()));
    double m = y + 56;
    svg.line(x + 5, m - 10, x + 5, m + 2).stroke(Palette.ACCENT, 2.2);
    svg.text(x + 16, m, "start", 10, "measured, 95 %");
    if (backoff.value() != null) {
      svg.text(x, m + 15, "start", 10, FigureText.interval(backoff.value(), backoff.u95()));
      svg.text(x, m + 28, "start", 10, FigureText.degrees(backoff.value(), backoff.u95()));
      int whole = (int) Math.floor(Math.max(0, backoff.value()));
      int meant = (int) Math.floor(backoff.target());
      if (whole != 0 || meant != 0) {
        svg.text(x, m + 43, "start", 9, "whole turns: %d of %d".formatted(whole, meant));
      }
    }
    svg.text(x, m + 62, "start", 11, FigureText.word(backoff.decision()))
        .set("font-weight", "bold");
  }

  private int sense() {
    return end == End.CLOSED ? -1 : 1;
  }

  private double x(double turns, double radius) {
    return X + sense() * radius * Math.sin(2 * Math.PI * turns);
  }

  private double y(double turns, double radius) {
    return Y - radius * Math.cos(2 * Math.PI * turns);
  }

  /** A piece of a ring, at most one turn of it. */
  private String segment(double from, double to, double inner, double outer) {
    double last = Math.min(to, from + 0.9999);
    int large = last - from > 0.5 ? 1 : 0;
    int sweep = sense() > 0 ? 1 : 0;
    return Svg.format(
        "M%.2f %.2fA%.2f %.2f 0 %d %d %.2f %.2fL%.2f %.2fA%.2f %.2f 0 %d %d %.2f %.2fz",
        x(from, outer),
        y(from, outer),
        outer,
        outer,
        large,
        sweep,
        x(last, outer),
        y(last, outer),
        x(last, inner),
        y(last, inner),
        inner,
        inner,
        large,
        1 - sweep,
        x(from, inner),
        y(from, inner));
  }
}
