package tripline.harness.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.Version;
import tripline.compare.Account;
import tripline.compare.CamMove;
import tripline.compare.Comparison;
import tripline.compare.EndMove;
import tripline.compare.Family;
import tripline.compare.Movement;
import tripline.compare.Note;
import tripline.compare.SheetDifference;
import tripline.compare.TripMove;
import tripline.job.Direction;
import tripline.job.End;
import tripline.measure.Decision;
import tripline.measure.Estimate;

/** A comparison as one JSON object: keys in a fixed order, what is not known {@code null}. */
public final class CompareJson {
  /** Raised when a key changes its meaning; never for an addition. */
  public static final int FORMAT = 1;

  private CompareJson() {}

  /**
   * Writes it; leaves the writer open.
   *
   * @throws IOException if the writer refuses
   */
  public static void write(ComparedFiles files, Writer out) throws IOException {
    try (JsonGenerator g = JsonOut.generator(out)) {
      write(files, new JsonOut(g));
      g.writeRaw('\n');
    }
  }

  private static void write(ComparedFiles files, JsonOut out) throws IOException {
    Comparison comparison = files.comparison();
    out.open();
    out.number("format", FORMAT);
    out.text("tripline", Version.TEXT);
    out.text("answer", comparison.answer().word());
    out.text("tag", comparison.after().tag());
    account("before", files.before(), comparison.before(), out);
    account("after", files.after(), comparison.after(), out);
    family("trip_family", comparison.tripFamily(), out);
    family("figure_family", comparison.figureFamily(), out);
    out.list("cams", comparison.cams(), CompareJson::cam);
    out.list("contacts", comparison.trips(), CompareJson::trip);
    out.open("ends");
    for (End end : End.values()) {
      out.object(end.word(), comparison.end(end), CompareJson::end);
    }
    out.close();
    out.open("travel");
    movement("span", comparison.span(), out);
    movement("lost_motion", comparison.lostMotion(), out);
    out.close();
    out.open("together");
    for (Direction direction : Direction.values()) {
      estimate(direction.word(), Optional.ofNullable(comparison.together().get(direction)), out);
    }
    out.close();
    out.truth("sheet_changed", isSheetChanged(comparison));
    out.list("sheet", comparison.sheet(), CompareJson::difference);
    out.truth("recorded_backward", files.isBackward());
    out.list("notes", comparison.notes(), CompareJson::note);
    out.close();
  }

  private static boolean isSheetChanged(Comparison comparison) {
    return !comparison
        .before()
        .origin()
        .jobSha256()
        .equals(comparison.after().origin().jobSha256());
  }

  private static void account(String key, ComparedFiles.Named named, Account account, JsonOut out)
      throws IOException {
    out.open(key);
    out.text("file", named.file());
    out.text("sha256", account.origin().sha256());
    out.number("setting", account.origin().setting());
    out.truth("as_found", named.asFound());
    out.text("started", named.started().map(Object::toString).orElse(null));
    out.decision("decision", account.decision().orElse(null));
    out.text("job_sha256", account.origin().jobSha256());
    out.text("datum", account.travel().datum());
    out.close();
  }

  private static void family(String key, Family family, JsonOut out) throws IOException {
    out.open(key);
    out.number("figures", family.figures());
    out.number("level", (Double) family.level());
    out.number("factor", (Double) family.factor());
    out.close();
  }

  private static void cam(CamMove cam, JsonOut out) throws IOException {
    out.text("cam", cam.after().cam());
    out.text("edge", cam.after().edge());
    out.text("from", cam.after().from());
    out.text("contact", cam.trip().map(TripMove::contact).orElse(null));
    figure("before", cam.move().before(), out);
    figure("after", cam.move().after(), out);
    estimate("moved", cam.move().by(), out);
    estimate("against_others", cam.againstOthers(), out);
    out.text("seen", cam.seen().word());
    both("target", cam.before().target(), cam.after().target(), out);
    both("tolerance", cam.before().tolerance(), cam.after().tolerance(), out);
    decisions(cam.before().decision(), cam.after().decision(), out);
    movement("differential", cam.differential(), out);
  }

  private static void trip(TripMove trip, JsonOut out) throws IOException {
    out.text("contact", trip.contact());
    out.text("cam", trip.cam());
    out.text("edge", trip.edge().orElse(null));
    out.text("direction", trip.direction().word());
    out.number("strokes_before", trip.strokesBefore());
    out.number("strokes_after", trip.strokesAfter());
    out.truth("turned", trip.turned());
    fields(trip.move(), out);
  }

  private static void end(EndMove end, JsonOut out) throws IOException {
    movement("backoff", end.backoff(), out);
    movement("coast", end.coast(), out);
    movement("margin", end.margin(), out);
    out.open("stopped_by");
    out.text("before", end.before().stoppedBy());
    out.text("after", end.after().stoppedBy());
    out.close();
    decisions(end.before().decision(), end.after().decision(), out);
  }

  private static void movement(String key, Movement move, JsonOut out) throws IOException {
    out.object(key, move, CompareJson::fields);
  }

  private static void fields(Movement move, JsonOut out) throws IOException {
    figure("before", move.before(), out);
    figure("after", move.after(), out);
    estimate("moved", move.by(), out);
    out.text("seen", move.seen().word());
  }

  private static void figure(String key, Optional<Estimate> figure, JsonOut out)
      throws IOException {
    out.object(
        key,
        figure.orElse(null),
        (f, o) -> {
          o.number("value", (Double) f.value());
          o.number("u", (Double) f.u());
          o.number("u95", (Double) f.expanded95());
        });
  }

  private static void estimate(String key, Optional<Estimate> by, JsonOut out) throws IOException {
    out.object(
        key,
        by.orElse(null),
        (b, o) -> {
          o.number("value", (Double) b.value());
          o.number("u", (Double) b.u());
          o.number("u95", (Double) b.expanded95());
          o.number("chance", (Double) Movement.chance(b));
          o.list("parts", List.copyOf(b.budget().entrySet()), CompareJson::part);
        });
  }

  private static void part(Map.Entry<String, Double> part, JsonOut out) throws IOException {
    out.text("name", part.getKey());
    out.number("u", part.getValue());
  }

  private static void both(String key, @Nullable Double before, @Nullable Double after, JsonOut out)
      throws IOException {
    out.open(key);
    out.number("before", before);
    out.number("after", after);
    out.close();
  }

  private static void decisions(Decision before, Decision after, JsonOut out) throws IOException {
    out.open("decision");
    out.decision("before", before);
    out.decision("after", after);
    out.close();
  }

  private static void difference(SheetDifference difference, JsonOut out) throws IOException {
    out.text("what", difference.what());
    out.text("name", difference.name());
    out.text("before", difference.before().isEmpty() ? null : difference.before());
    out.text("after", difference.after().isEmpty() ? null : difference.after());
  }

  private static void note(Note note, JsonOut out) throws IOException {
    out.text("code", note.code().word());
    out.text("message", note.message());
  }
}
