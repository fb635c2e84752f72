package tripline.harness.resultfile;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tripline.job.Direction;
import tripline.job.End;
import tripline.measure.Decision;
import tripline.result.Result.Backoff;
import tripline.result.Result.CamResult;
import tripline.result.Result.ContactResult;
import tripline.result.Result.EndResult;
import tripline.result.Result.EndsResult;
import tripline.result.Result.Measured;
import tripline.result.Result.SensorResult;
import tripline.result.Result.StopResult;
import tripline.result.Result.TravelResult;
import tripline.result.Result.TripResult;
import tripline.sample.ContactState;
import tripline.travel.Datum;

/** Parts of a result, read back; advice and stretches for drawings are left out. */
final class Parts {
  private enum Edge {
    LOWER,
    UPPER
  }

  private Parts() {}

  static Decision decision(Field field, String key) {
    return field.word(key, Decision.values(), Parts::lower);
  }

  private static String lower(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }

  static TravelResult travel(Field travel) {
    Field sensor = travel.key("sensor");
    return new TravelResult(
        travel.word("datum", Datum.values(), Datum::word).word(),
        travel.number("datum_position"),
        new SensorResult(
            sensor.text("side"), sensor.number("turns_per_unit"), sensor.uncertainty("scale_u")),
        stop(travel, "closed_stop"),
        stop(travel, "open_stop"),
        Figures.optional(travel, "span"),
        Figures.optional(travel, "lost_motion"),
        travel.optionalText("lost_motion_note").orElse(null));
  }

  private static @Nullable StopResult stop(Field travel, String key) {
    return travel
        .optional(key)
        .map(s -> new StopResult(s.number("value"), s.uncertainty("u"), s.text("source")))
        .orElse(null);
  }

  static CamResult cam(Field cam) {
    Measured trip = Figures.beside(cam, "trip");
    return new CamResult(
        cam.text("cam"),
        edge(cam),
        trip == null ? null : (Double) trip.value(),
        trip == null ? null : (Double) trip.u(),
        trip == null ? null : (Double) trip.u95(),
        Figures.number(cam, "target"),
        Figures.number(cam, "tolerance"),
        Figures.number(cam, "target_percent"),
        cam.word("from", End.values(), End::word).word(),
        decision(cam, "decision"),
        Figures.number(cam, "probability"),
        Figures.optional(cam, "differential"),
        cam.count("strokes"),
        Figures.number(cam, "spread"),
        Figures.number(cam, "opening"),
        Figures.number(cam, "closing"),
        trip,
        null);
  }

  private static @Nullable String edge(Field field) {
    return field.isAbsent("edge") ? null : lower(field.word("edge", Edge.values(), Parts::lower));
  }

  static ContactResult contact(Field contact) {
    return new ContactResult(
        contact.text("contact"),
        contact.text("role"),
        contact.text("cam"),
        decision(contact, "decision"),
        contact.truth("as_charted"),
        contact.truth("exercised"),
        Figures.number(contact, "worst_settle_s"),
        List.of(),
        List.of(),
        contact.list("trips").stream().map(Parts::trip).toList());
  }

  private static TripResult trip(Field trip) {
    return new TripResult(
        edge(trip),
        trip.word("direction", Direction.values(), Direction::word).word(),
        lower(trip.word("to", ContactState.values(), Parts::lower)),
        Figures.of(trip, "position"),
        trip.count("strokes"),
        trip.uncertainty("spread"));
  }

  static EndsResult ends(Field ends) {
    return new EndsResult(end(ends.key("closed")), end(ends.key("open")));
  }

  private static EndResult end(Field end) {
    Field b = end.key("backoff");
    Measured backoff = Figures.beside(b, "value");
    return new EndResult(
        new Backoff(
            backoff == null ? null : (Double) backoff.value(),
            backoff == null ? null : (Double) backoff.u(),
            backoff == null ? null : (Double) backoff.u95(),
            b.number("target"),
            b.number("tolerance"),
            decision(b, "decision"),
            Figures.number(b, "probability"),
            backoff),
        end.optionalText("stopped_by").orElse(null),
        Figures.optional(end, "coast"),
        Figures.optional(end, "margin"),
        end.isAbsent("margin_decision") ? null : decision(end, "margin_decision"),
        Figures.number(end, "margin_probability"),
        decision(end, "decision"));
  }
}
