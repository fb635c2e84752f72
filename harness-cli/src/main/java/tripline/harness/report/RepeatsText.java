package tripline.harness.report;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tripline.result.AcceptanceResult;
import tripline.result.AcceptanceResult.SeriesResult;

/** One row a contact: count, mean, standard deviation and range in both directions. */
final class RepeatsText {
  private static final int LABEL = 13;
  private static final int N = 3;
  private static final int MEAN = 10;
  private static final int SD = 11;
  private static final int RANGE = 9;

  private final AcceptanceResult accepted;
  private final StandOutWords standing;

  private RepeatsText(AcceptanceResult accepted, StandOutWords standing) {
    this.accepted = accepted;
    this.standing = standing;
  }

  static void write(Page page, AcceptanceResult accepted, StandOutWords standing) {
    page.blank();
    List<Page.Cell> head = new ArrayList<>(List.of(Page.head("CONTACT", LABEL)));
    for (String direction : List.of("opening", "closing")) {
      head.addAll(
          List.of(
              Page.head("n", N),
              Page.head(direction, MEAN),
              Page.head("s", SD),
              Page.head("range", RANGE)));
    }
    page.row(head.toArray(Page.Cell[]::new));
    new RepeatsText(accepted, standing).rows(page);
  }

  private void rows(Page page) {
    Set<String> done = new HashSet<>();
    for (SeriesResult series : accepted.series()) {
      if (done.add(name(series))) {
        List<Page.Cell> cells = new ArrayList<>();
        cells.add(Page.cell("  " + name(series), LABEL));
        cells.addAll(direction(series, "opening"));
        cells.addAll(direction(series, "closing"));
        page.row(cells.toArray(Page.Cell[]::new));
      }
    }
  }

  private static String name(SeriesResult series) {
    return series.edge() == null ? series.contact() : series.contact() + " " + series.edge();
  }

  private List<Page.Cell> direction(SeriesResult of, String direction) {
    return accepted.series().stream()
        .filter(s -> s.contact().equals(of.contact()) && s.direction().equals(direction))
        .filter(s -> Objects.equals(s.edge(), of.edge()))
        .findFirst()
        .map(this::cells)
        .orElse(cells("0", "-", "-", "-"));
  }

  private List<Page.Cell> cells(SeriesResult s) {
    double known = Math.max(figure(s.sd()), figure(s.measurementSd()));
    return cells(
        Integer.toString(s.strokes()),
        s.mean() == null ? "-" : Figures.decimals(s.mean(), Rounded.decimals(known)),
        s.sd() == null ? "-" : FigureText.uncertainty(s.sd()) + mark(s),
        s.range() == null ? "-" : FigureText.uncertainty(s.range()));
  }

  private static List<Page.Cell> cells(String n, String mean, String sd, String range) {
    return List.of(
        Page.cell(n, N), Page.cell(mean, MEAN), Page.cell(sd, SD), Page.cell(range, RANGE));
  }

  private static double figure(@Nullable Double figure) {
    return figure == null ? 0 : figure;
  }

  /** What stands out, beside the scatter it spoils. */
  private String mark(SeriesResult series) {
    String mark = standing.mark(series);
    return mark.isEmpty() ? "" : " " + mark;
  }
}
