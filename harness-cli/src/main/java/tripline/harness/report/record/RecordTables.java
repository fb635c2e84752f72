package tripline.harness.report.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tripline.harness.report.FigureText;
import tripline.harness.report.PartWords;
import tripline.harness.report.Provenance;
import tripline.job.Contact;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.job.Seat;
import tripline.measure.Decision;
import tripline.result.Result;
import tripline.result.Result.Adjust;
import tripline.result.Result.Backoff;
import tripline.result.Result.CamResult;
import tripline.result.Result.ContactResult;
import tripline.result.Result.EndResult;
import tripline.result.Result.EndsResult;
import tripline.result.Result.FindingResult;
import tripline.result.Result.Measured;
import tripline.result.Result.RecordingResult;
import tripline.result.Result.SamplingResult;
import tripline.result.Result.TripResult;

/** The tables of a record, row by row. */
final class RecordTables {
  private RecordTables() {}

  static List<Fields> recordings(Result result, Provenance from) {
    List<Fields> rows = new ArrayList<>();
    for (int i = 0; i < result.recordings().size(); i++) {
      RecordingResult r = result.recordings().get(i);
      Provenance.Made made = from.recording(i);
      SamplingResult sampling = r.sampling();
      rows.add(
          new Fields()
              .text("number", Integer.toString(i + 1))
              .text("file", r.file())
              .some("started", made.started().map(Instant::toString))
              .some("logger", made.logger())
              .text("sha256", r.sha256())
              .text("drive", r.drive())
              .text("samples", Long.toString(r.samples()))
              .text("duration", FigureText.value(r.durationS(), 0.1))
              .text("rate", rate(sampling.usualRateHz()))
              .text("positionRate", rate(sampling.positionRateHz()))
              .text("lost", lost(sampling))
              .text("noise", r.noise() > 0 ? FigureText.uncertainty(r.noise()) : "-")
              .text("quantum", r.quantum() > 0 ? FigureText.uncertainty(r.quantum()) : "-"));
    }
    return rows;
  }

  private static String rate(@Nullable Double hertz) {
    return hertz == null ? "-" : FigureText.plain(hertz);
  }

  private static String lost(SamplingResult sampling) {
    if (sampling.lostStretches() == 0) {
      return "none";
    }
    Long samples = sampling.lostSamples();
    return (samples == null ? "" : samples + " samples, ")
        + FigureText.value(sampling.lostS(), 0.1)
        + " s in "
        + (sampling.lostStretches() == 1 ? "1 stretch" : sampling.lostStretches() + " stretches");
  }

  static List<Fields> ends(Result result, JobSheet sheet) {
    List<Fields> rows = new ArrayList<>();
    for (End end : End.values()) {
      EndResult e = end(result.ends(), end);
      Backoff b = e.backoff();
      rows.add(
          new Fields()
              .text("end", end.word())
              .text(
                  "stoppedBy", e.stoppedBy() == null ? "not run" : e.stoppedBy().replace('-', ' '))
              .text("seat", sheet.end(end).seat() == Seat.TORQUE ? "torque" : "limit")
              .text("margin", figure(e.margin()))
              .text("coast", figure(e.coast()))
              .text("marginProbability", FigureText.probability(e.marginProbability()))
              .text("marginDecision", decision(e.marginDecision()))
              .text("backoff", FigureText.interval(b.value(), b.u95()))
              .text("target", FigureText.target(b.target(), b.tolerance()))
              .text("probability", FigureText.probability(b.probability()))
              .text("decision", FigureText.word(b.decision()))
              .lines("found", "one", found(result, end))
              .text("parts", PartWords.list(b.estimate())));
    }
    return rows;
  }

  private static EndResult end(EndsResult ends, End end) {
    return end == End.CLOSED ? ends.closed() : ends.open();
  }

  private static List<String> found(Result result, End end) {
    return result.asFound().stream()
        .map(s -> end(s.ends(), end).backoff())
        .map(b -> found(b.value(), b.u95(), b.decision()))
        .toList();
  }

  private static String found(@Nullable Double value, @Nullable Double u95, Decision decision) {
    return FigureText.interval(value, u95) + " " + FigureText.word(decision);
  }

  static List<Fields> cams(Result result) {
    return result.cams().stream().map(c -> cam(result, c)).toList();
  }

  private static Fields cam(Result result, CamResult c) {
    double half = c.u95() == null ? 0 : c.u95();
    boolean both = c.trip() != null && c.target() != null;
    return new Fields()
        .text("cam", name(c))
        .text("trip", FigureText.interval(c.trip(), c.u95()))
        .text("target", FigureText.target(c.target(), c.tolerance()))
        .some(
            "percent",
            Optional.ofNullable(c.targetPercent())
                .map(p -> FigureText.plain(p) + " % from " + c.from()))
        .text("off", both ? FigureText.signed(value(c.trip()) - value(c.target()), half) : "-")
        .text("probability", FigureText.probability(c.probability()))
        .text("decision", FigureText.word(c.decision()))
        .lines(
            "found",
            "one",
            result.asFound().stream()
                .flatMap(s -> s.cams().stream())
                .filter(f -> f.cam().equals(c.cam()) && Objects.equals(f.edge(), c.edge()))
                .map(f -> found(f.trip(), f.u95(), f.decision()))
                .toList())
        .text("differential", figure(c.differential()))
        .text("strokes", Integer.toString(c.strokes()));
  }

  private static double value(@Nullable Double figure) {
    return figure == null ? Double.NaN : figure;
  }

  private static String name(CamResult cam) {
    return cam.edge() == null ? cam.cam() : cam.cam() + " " + cam.edge();
  }

  static List<Fields> contacts(Result result, JobSheet sheet) {
    List<Fields> rows = new ArrayList<>();
    for (Contact contact : sheet.contacts()) {
      for (ContactResult c : result.contacts()) {
        if (c.contact().equals(contact.name())) {
          rows.add(
              new Fields()
                  .text("contact", c.contact())
                  .text("role", c.role())
                  .text("cam", c.cam())
                  .text("closed", contact.closed().word())
                  .text("opening", changes(c, "opening"))
                  .text("closing", changes(c, "closing"))
                  .text(
                      "settles",
                      c.worstSettleS() == null ? "-" : FigureText.plain(1000 * c.worstSettleS()))
                  .text("decision", FigureText.word(c.decision())));
        }
      }
    }
    return rows;
  }

  /** Where it changed in one direction, to which state. */
  private static String changes(ContactResult contact, String direction) {
    String all =
        contact.trips().stream()
            .filter(t -> t.direction().equals(direction))
            .map(
                t ->
                    FigureText.interval(t.position().value(), t.position().u95()) + " to " + t.to())
            .collect(Collectors.joining("; "));
    return all.isEmpty() ? "-" : all;
  }

  /** What every trip point is uncertain by. */
  static List<Fields> budgets(Result result) {
    List<Fields> rows = new ArrayList<>();
    for (CamResult cam : result.cams()) {
      if (cam.estimate() != null) {
        rows.add(budget("cam " + name(cam) + ", off target", cam.estimate()));
      }
    }
    for (ContactResult contact : result.contacts()) {
      for (TripResult trip : contact.trips()) {
        String edge = trip.edge() == null ? "" : " " + trip.edge();
        rows.add(budget(contact.contact() + edge + ", " + trip.direction(), trip.position()));
      }
    }
    return rows;
  }

  private static Fields budget(String of, Measured figure) {
    return new Fields().text("of", of).text("parts", PartWords.list(figure));
  }

  static List<Fields> findings(Result result) {
    return result.findings().stream().map(RecordTables::finding).toList();
  }

  private static Fields finding(FindingResult f) {
    List<String> whose = new ArrayList<>();
    if (f.contact() != null) {
      whose.add("contact " + f.contact());
    }
    if (f.cam() != null) {
      whose.add("cam " + f.cam());
    }
    if (f.recording() != null) {
      whose.add("recording " + (f.recording() + 1));
    }
    if (f.timeS() != null) {
      whose.add(FigureText.value(f.timeS(), 0.01) + " s");
    }
    String evidence =
        f.evidence().entrySet().stream()
            .sorted(Map.Entry.comparingByKey())
            .map(e -> e.getKey().replace('_', ' ') + " " + evidence(e.getKey(), e.getValue()))
            .collect(Collectors.joining("; "));
    return new Fields()
        .text("severity", f.severity().equals("fault") ? "fault" : "other")
        .text("word", f.severity().equals("fault") ? "FAULT" : f.severity())
        .text("code", f.code())
        .some("whose", Optional.of(String.join(", ", whose)))
        .text("message", f.message())
        .some("evidence", Optional.of(evidence))
        .some("action", Optional.of(f.action()));
  }

  /** Four digits of a number: what it rests on stands in the message, the rest in the result. */
  private static String evidence(String key, Object value) {
    if (value instanceof Double number) {
      return key.equals("probability") ? FigureText.probability(number) : FigureText.plain(number);
    }
    return value instanceof List<?> list
        ? list.stream().map(v -> evidence("", v)).collect(Collectors.joining(", "))
        : String.valueOf(value);
  }

  static List<Fields> adjustments(Result result) {
    List<Fields> rows = new ArrayList<>();
    for (CamResult cam : result.cams()) {
      Adjust adjust = cam.adjust();
      if (adjust != null && cam.decision() == Decision.REJECT) {
        double half = cam.u95() == null ? 0 : cam.u95();
        rows.add(
            new Fields()
                .text("cam", "cam " + name(cam))
                .text(
                    "move",
                    "Move its trip point %s turns (%s° of the handwheel) toward %s."
                        .formatted(
                            FigureText.value(Math.abs(adjust.turns()), half),
                            FigureText.value(Math.abs(adjust.degrees()), 10),
                            adjust.turns() < 0 ? "closed" : "open"))
                .lines("steps", "step", adjust.steps()));
      }
    }
    return rows;
  }

  private static String figure(@Nullable Measured figure) {
    return figure == null ? "-" : FigureText.interval(figure.value(), figure.u95());
  }

  private static String decision(@Nullable Decision decision) {
    return decision == null ? "-" : FigureText.word(decision);
  }
}
