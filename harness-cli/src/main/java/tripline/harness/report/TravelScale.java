package tripline.harness.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.TripPlan;
import tripline.result.Result.Stretch;

/**
 * Travel laid out in the columns of a line, from the closed stop to the open stop.
 *
 * <p>The last turns at both ends are drawn larger than mid-travel: a backoff of half a turn in
 * thirty would vanish otherwise. Every drawing on one scale has the same width.
 */
public final class TravelScale {
  /** Columns of a drawing, hard stops and breaks included. */
  public static final int WIDTH = 55;

  private static final int END_COLUMNS = 15;
  private static final double[] NICE = {1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10};

  /** One stretch of travel on one scale; column 0 of the drawing is the closed stop. */
  private record Panel(double from, double to, int firstColumn, int columns) {
    double at(double column) {
      return from + (to - from) * column / columns;
    }

    double columnOf(double x) {
      return firstColumn + (x - from) / (to - from) * columns;
    }
  }

  private final double span;
  private final List<Panel> panels = new ArrayList<>();

  private TravelScale(double span, double closedEnd, double openEnd) {
    this.span = span;
    double[] edges = {0, closedEnd, span - openEnd, span};
    int column = 1;
    int middle =
        WIDTH - 2 - (closedEnd > 0 ? END_COLUMNS + 1 : 0) - (openEnd > 0 ? END_COLUMNS + 1 : 0);
    int[] columns = {END_COLUMNS, middle, END_COLUMNS};
    for (int i = 0; i < 3; i++) {
      if (edges[i + 1] > edges[i]) {
        panels.add(new Panel(edges[i], edges[i + 1], column, columns[i]));
        column += columns[i] + 1;
      }
    }
  }

  /**
   * The scale that shows a sheet's trip points best.
   *
   * @param sheet what was intended
   * @param span travel between the stops, turns, &gt; 0
   */
  public static TravelScale of(JobSheet sheet, double span) {
    return new TravelScale(
        span, enlarged(sheet, End.CLOSED, span), enlarged(sheet, End.OPEN, span));
  }

  /**
   * A span to draw with where the sheet states none: wide enough for every trip point in turns.
   *
   * @return turns, &gt; 0
   */
  public static double assumedSpan(JobSheet sheet) {
    double farthest =
        Stream.concat(
                sheet.cams().stream()
                    .flatMap(c -> c.trips().stream())
                    .filter(t -> t.unit() == TripPlan.Unit.TURNS)
                    .map(TripPlan::distance),
                Stream.of(sheet.closed().backoffTurns(), sheet.open().backoffTurns()))
            .mapToDouble(d -> d)
            .max()
            .orElse(1);
    return nice(Math.max(1, farthest) * 10);
  }

  /** Turns at an end that are drawn larger; 0 where no trip point is near. */
  private static double enlarged(JobSheet sheet, End end, double span) {
    OptionalDouble reach =
        IntendedChart.trips(sheet, span).stream()
            .map(t -> end == End.CLOSED ? t : t.mirrored(span))
            .filter(t -> t.x() < 0.06 * span)
            .mapToDouble(t -> t.x() + t.tolerance())
            .max();
    double wide = reach.isPresent() ? nice(1.6 * reach.getAsDouble()) : 0;
    return wide <= span / 4 ? wide : 0;
  }

  private static double nice(double least) {
    double decade = Math.pow(10, Math.floor(Math.log10(Math.max(least, 1e-6))));
    return Arrays.stream(NICE)
        .map(n -> n * decade)
        .filter(n -> n >= least - 1e-12)
        .findFirst()
        .orElse(least);
  }

  /** Travel between the stops, turns. */
  public double span() {
    return span;
  }

  /** Whether mid-travel is drawn smaller than an end. */
  public boolean isBroken() {
    return panels.size() > 1;
  }

  /** A contact's line: solid where it is closed. Stretches in x, turns. */
  public String bar(List<Stretch> closed, Glyphs glyphs) {
    String[] line = frame(glyphs);
    for (Panel panel : panels) {
      boolean[] halves = new boolean[2 * panel.columns()];
      for (int h = 0; h < halves.length; h++) {
        double x = panel.at((h + 0.5) / 2);
        halves[h] = closed.stream().anyMatch(s -> s.from() <= x && x < s.to());
      }
      // A stretch too short for its panel is drawn half a column wide rather than not at all.
      for (Stretch s : closed) {
        double centre = (s.from() + s.to()) / 2;
        if (centre >= panel.from() && centre < panel.to()) {
          halves[(int) (2 * (panel.columnOf(centre) - panel.firstColumn()))] = true;
        }
      }
      for (int c = 0; c < panel.columns(); c++) {
        line[panel.firstColumn() + c] = glyphs.cell(halves[2 * c], halves[2 * c + 1]);
      }
    }
    return String.join("", line);
  }

  /** A cam's line: its trip points, each with its tolerance. */
  public String marks(List<PlannedTrip> trips, Glyphs glyphs) {
    String[] line = frame(glyphs);
    for (PlannedTrip trip : trips) {
      int from = column(trip.x() - trip.tolerance());
      int to = column(trip.x() + trip.tolerance());
      for (int c = from; c <= to; c++) {
        if (!isFrame(c)) {
          line[c] = c == from ? glyphs.bandFrom() : c == to ? glyphs.bandTo() : glyphs.band();
        }
      }
      line[column(trip.x())] = glyphs.trip();
    }
    return String.join("", line);
  }

  /** The tick line between drawings and labels. */
  public String ticks(Glyphs glyphs) {
    String[] line = frame(glyphs);
    for (int c = 1; c < WIDTH - 1; c++) {
      if (!isFrame(c)) {
        line[c] = glyphs.open();
      }
    }
    for (double x : tickPositions()) {
      int column = tickColumn(x);
      if (!isFrame(column)) {
        line[column] = glyphs.tick();
      }
    }
    return String.join("", line);
  }

  /** A sign at a place of travel, x in turns. */
  public record Sign(double x, String glyph) {}

  /** The tick line with signs on it, later ones over earlier ones; beyond a stop they lie on it. */
  public String ticks(Glyphs glyphs, List<Sign> signs) {
    String[] line = ticks(glyphs).codePoints().mapToObj(Character::toString).toArray(String[]::new);
    for (Sign sign : signs) {
      int column = sign.x() <= 0 ? 0 : sign.x() >= span ? WIDTH - 1 : column(sign.x());
      line[column] = sign.glyph();
    }
    return String.join("", line);
  }

  /** Labels of the ticks in turns. */
  public String turnLabels() {
    return labels(x -> Figures.text(x));
  }

  /** Labels of the ticks in per cent of span. */
  public String percentLabels() {
    return labels(x -> Figures.text(x / span * 100, 3));
  }

  /** A label gives way by a column to its neighbour, and is left out where that is not enough. */
  private String labels(DoubleFunction<String> text) {
    StringBuilder line = new StringBuilder(" ".repeat(WIDTH + 4));
    for (double x : tickPositions()) {
      String label = text.apply(x);
      int centred = tickColumn(x) - label.length() / 2;
      for (int shift : new int[] {0, 1, -1}) {
        int from = Math.max(0, Math.min(centred + shift, line.length() - label.length()));
        int to = from + label.length();
        if (line.substring(Math.max(0, from - 1), Math.min(line.length(), to + 1)).isBlank()) {
          line.replace(from, to, label);
          break;
        }
      }
    }
    return line.toString().stripTrailing();
  }

  /** Stops first, so that their labels are never the ones to give way. */
  private List<Double> tickPositions() {
    List<Double> ticks = new ArrayList<>(List.of(0.0, span));
    for (Panel panel : panels) {
      boolean end = isBroken() && panel.columns() == END_COLUMNS;
      int parts = end ? 2 : 4;
      for (int i = 1; i < parts; i++) {
        ticks.add(end ? panel.at(panel.columns() * i / (double) parts) : span * i / parts);
      }
      if (panel.to() < span) {
        ticks.add(panel.to());
      }
    }
    return ticks;
  }

  private int tickColumn(double x) {
    for (Panel panel : panels) {
      if (Math.abs(x - panel.from()) < 1e-9 * span) {
        return panel.firstColumn() - 1;
      }
    }
    return x >= span ? WIDTH - 1 : column(x);
  }

  private int column(double x) {
    for (Panel panel : panels) {
      if (x < panel.to()) {
        return Math.max(panel.firstColumn(), (int) panel.columnOf(x));
      }
    }
    return WIDTH - 2;
  }

  private boolean isFrame(int column) {
    return column == 0
        || column == WIDTH - 1
        || panels.stream().anyMatch(p -> p.firstColumn() - 1 == column);
  }

  private String[] frame(Glyphs glyphs) {
    String[] line = new String[WIDTH];
    for (int c = 0; c < WIDTH; c++) {
      line[c] = c == 0 || c == WIDTH - 1 ? glyphs.stop() : isFrame(c) ? glyphs.scaleBreak() : " ";
    }
    return line;
  }
}
