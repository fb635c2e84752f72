package tripline.harness.report.drawing;

import java.util.ArrayList;
import java.util.List;
import tripline.harness.report.FigureText;
import tripline.result.Result;
import tripline.result.Result.CamResult;
import tripline.result.Result.ChangeResult;
import tripline.result.Result.PathPoint;
import tripline.result.Result.RecordingResult;
import tripline.result.Result.SettingResult;
import tripline.result.Result.StrokeResult;

/** Position against time over one recording, with every change, the hard stops and the coast. */
final class TravelOverTime {
  private static final double LEFT = 40;
  private static final double RIGHT = 292;
  private static final double TOP = 23;
  private static final double BOTTOM = 186;
  private static final double HEIGHT = 216;
  private static final double SETTING_WIDTH = 42;

  private final Result result;
  private final int index;
  private final RecordingResult recording;
  private final Axis time;
  private final Axis position;
  private final double span;
  private final boolean placed;
  private final Svg svg;
  private final String id;

  private TravelOverTime(String id, Result result, int index, double span) {
    this.id = id;
    this.result = result;
    this.index = index;
    this.recording = result.recordings().get(index);
    this.span = span;
    this.placed = !result.travel().datum().equals("first-reading");
    List<PathPoint> points = recording.path().points();
    double low = placed ? 0 : Double.POSITIVE_INFINITY;
    double high = placed ? span : Double.NEGATIVE_INFINITY;
    double last = Math.max(recording.durationS(), 1e-3);
    double first = 0;
    for (PathPoint point : points) {
      low = Math.min(low, point.position());
      high = Math.max(high, point.position());
      first = Math.min(first, point.timeS());
      last = Math.max(last, point.timeS());
    }
    double pad = Math.max(0.04 * (high - low), 1e-3);
    this.time = new Axis(first, last, LEFT, RIGHT);
    this.position = new Axis(low - pad, high + pad, BOTTOM, TOP);
    this.svg =
        new Svg(
            id,
            HEIGHT,
            "Position against time, recording " + (index + 1),
            "%d strokes over %.1f s, %s"
                .formatted(recording.strokes().size(), last, changesInWords()));
  }

  /** A recording; its outline must have at least one point. */
  static String draw(String id, Result result, int recording, double span) {
    TravelOverTime drawing = new TravelOverTime(id, result, recording, span);
    drawing.stops();
    drawing.coasts();
    drawing.scales();
    drawing.cams();
    drawing.settings();
    drawing
        .svg
        .path(Outline.of(drawing.recording.path().points(), drawing.time, drawing.position))
        .fill("none")
        .stroke(Palette.INK, 1.3)
        .set("stroke-linejoin", "round")
        .data("mark", "path");
    drawing.changes();
    drawing.numbers();
    return drawing.svg.toString();
  }

  private String changesInWords() {
    List<ChangeResult> changes = changesHere();
    return changes.isEmpty()
        ? "no contact changed."
        : "%d changes of contacts, the first (%s) at %s s, the last (%s) at %s s."
            .formatted(
                changes.size(),
                changes.get(0).contact(),
                Svg.format("%.2f", changes.get(0).timeS()),
                changes.get(changes.size() - 1).contact(),
                Svg.format("%.2f", changes.get(changes.size() - 1).timeS()));
  }

  /** Those of charted contacts; torque contacts and contactors have no trip point. */
  private List<ChangeResult> changesHere() {
    return result.changes().stream()
        .filter(c -> c.recording() == index)
        .filter(c -> result.contacts().stream().anyMatch(k -> k.contact().equals(c.contact())))
        .toList();
  }

  private void stops() {
    if (!placed) {
      return;
    }
    svg.rect(LEFT, position.at(0), RIGHT - LEFT, BOTTOM - position.at(0))
        .fill(Palette.MID)
        .data("mark", "stop-zone");
    svg.rect(LEFT, TOP, RIGHT - LEFT, position.at(span) - TOP)
        .fill(Palette.MID)
        .data("mark", "stop-zone");
  }

  private void coasts() {
    for (StrokeResult stroke : recording.strokes()) {
      Coast.of(result, index, stroke)
          .ifPresent(
              c ->
                  svg.rect(
                          time.within(c.fromS()),
                          TOP,
                          Math.max(0.8, time.within(c.toS()) - time.within(c.fromS())),
                          BOTTOM - TOP)
                      .fill(Palette.ACCENT)
                      .set("fill-opacity", 0.3)
                      .data("mark", "coast"));
    }
  }

  private void scales() {
    for (double tick : time.ticks(5)) {
      svg.line(time.at(tick), TOP, time.at(tick), BOTTOM + 3)
          .stroke(Palette.LIGHT, 0.7)
          .data("tick", tick)
          .data("panel", id)
          .data("axis", "time");
      svg.textAbout(time.at(tick), BOTTOM + 14, 9.5, text(tick, time.tickStep(5)));
    }
    svg.text((LEFT + RIGHT) / 2, HEIGHT - 3, "middle", 9.5, "seconds").fill(Palette.DARK);
    for (double tick : position.ticks(6)) {
      svg.line(LEFT - 3, position.at(tick), RIGHT, position.at(tick))
          .stroke(Palette.LIGHT, 0.7)
          .data("tick", tick)
          .data("panel", id)
          .data("axis", "position");
      svg.text(LEFT - 6, position.at(tick) + 3.3, "end", 9.5, text(tick, position.tickStep(6)));
    }
    svg.text(2, 10, "start", 9.5, "turns").fill(Palette.DARK);
  }

  static String text(double tick, double step) {
    int decimals = (int) Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
    return Svg.format(
        "%." + (step * Math.pow(10, decimals) % 1 > 1e-6 ? decimals + 1 : decimals) + "f", tick);
  }

  /** Targets as dashed lines, named at the right. */
  private void cams() {
    List<CamResult> known =
        result.cams().stream()
            .filter(c -> c.target() != null && position.holds(c.target()))
            .toList();
    double[] wanted = known.stream().mapToDouble(c -> position.at(target(c))).toArray();
    Integer[] order = Labels.order(wanted);
    double[] sorted = new double[wanted.length];
    for (int i = 0; i < sorted.length; i++) {
      sorted[i] = wanted[order[i]];
    }
    double[] at = Labels.apart(sorted, 11, TOP + 2, BOTTOM);
    for (int i = 0; i < at.length; i++) {
      CamResult cam = known.get(order[i]);
      svg.line(LEFT, sorted[i], RIGHT, sorted[i]).stroke(Palette.DARK, 0.8).dashed("4 3");
      svg.line(RIGHT, sorted[i], RIGHT + 6, at[i]).stroke(Palette.DARK, 0.8);
      svg.text(
          RIGHT + 8, at[i] + 3, "start", 9.5, Svg.fitted(cam.cam(), Svg.WIDTH - RIGHT - 10, 9.5));
    }
  }

  private static double target(CamResult cam) {
    return cam.target() == null ? Double.NaN : cam.target();
  }

  private void settings() {
    for (SettingResult setting : result.settings()) {
      if (setting.number() > 0 && setting.recording() == index && time.holds(setting.fromS())) {
        double x = time.at(setting.fromS());
        svg.line(x, TOP, x, BOTTOM).stroke(Palette.INK, 1.2).dashed("2 2").data("mark", "setting");
        boolean right = x + 3 + SETTING_WIDTH < RIGHT;
        double from = right ? x + 3 : x - 3 - SETTING_WIDTH;
        svg.text(
            right ? from : x - 3,
            clearest(from),
            right ? "start" : "end",
            9,
            "setting " + (setting.number() + 1));
      }
    }
  }

  /** The height at which a label that begins there keeps farthest from path and targets. */
  private double clearest(double from) {
    List<Double> lines = new ArrayList<>();
    for (double x = from - 4; x <= from + SETTING_WIDTH + 4; x += 2) {
      double timeS = time.from() + (x - LEFT) / (RIGHT - LEFT) * (time.to() - time.from());
      lines.add(position.at(Outline.at(recording.path().points(), timeS)));
    }
    result.cams().stream()
        .filter(c -> c.target() != null && position.holds(c.target()))
        .forEach(c -> lines.add(position.at(target(c))));
    double best = TOP + 12;
    double most = -1;
    for (double y = TOP + 12; y <= BOTTOM - 4; y += 2) {
      double middle = y - 3;
      double least =
          lines.stream().mapToDouble(l -> Math.abs(l - middle)).min().orElse(BOTTOM - TOP);
      if (least > most) {
        most = least;
        best = y;
      }
    }
    return best;
  }

  private void changes() {
    for (ChangeResult change : changesHere()) {
      double at =
          change.position() != null
              ? change.position()
              : Outline.at(recording.path().points(), change.timeS());
      double x = time.within(change.timeS());
      double y = position.at(Math.max(position.from(), Math.min(position.to(), at)));
      Element mark =
          change.atRest()
              ? svg.path(Svg.format("M%.2f %.2fl4.5 4.5l-4.5 4.5l-4.5 -4.5z", x, y - 4.5))
              : svg.circle(x, y, 2.8);
      mark.fill(change.to().equals("closed") ? Palette.ACCENT : Palette.PAPER)
          .stroke(Palette.ACCENT, 1.3)
          .data("mark", "change")
          .data("panel", id)
          .data("contact", change.contact())
          .data("time", change.timeS())
          .data("turns", at);
    }
  }

  /** The number of each stroke above its middle, as far as there is room. */
  private void numbers() {
    List<Double> used = new ArrayList<>();
    int number = 0;
    for (int r = 0; r < index; r++) {
      number += result.recordings().get(r).strokes().size();
    }
    for (StrokeResult stroke : recording.strokes()) {
      number++;
      double x = time.within((stroke.startS() + stroke.endS()) / 2);
      if (used.stream().allMatch(u -> Math.abs(u - x) >= 16)) {
        used.add(x);
        double y = TOP - 11;
        svg.circle(x, y, 6.5).fill(Palette.PAPER).stroke(Palette.DARK, 0.8);
        svg.text(x, y + 3.2, "middle", 9, Integer.toString(number));
      }
    }
  }

  /** For the description of a figure elsewhere. */
  static String coastInWords(StrokeResult stroke) {
    return stroke.coast() == null
        ? "not known"
        : FigureText.interval(stroke.coast().value(), stroke.coast().u95()) + " turns";
  }
}
