package tripline.harness.jobfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tomlj.TomlArray;
import tripline.job.Cam;
import tripline.job.End;
import tripline.job.TripPlan;

/** {@code [[cam]]} and its trip points. */
final class CamSection {
  private static final Map<String, End> ENDS =
      Words.inOrder("closed", End.CLOSED, "open", End.OPEN);
  private static final Range TURNS = Range.from(0, JobSection.MOST_TURNS, "turns");
  private static final Range PERCENT = Range.from(0, 100, "per cent of span");
  private static final Range TOLERANCE_TURNS = Range.above(0, JobSection.MOST_TURNS, "turns");
  private static final Range TOLERANCE_PERCENT = Range.above(0, 100, "per cent of span");
  private static final String TRIP =
      "{ from = \"closed\", turns = 0.5, tolerance = 0.1 }, or a list of two of them for a window";

  private CamSection() {}

  static List<Cam> all(List<Section> sections, Notes notes) {
    List<Cam> cams = new ArrayList<>();
    for (int i = 0; i < sections.size(); i++) {
      Section cam = sections.get(i);
      cam.require("name", "a name for the cam");
      String name = cam.text("name", TextRule.NAME).orElse("unnamed cam " + (i + 1));
      cams.add(new Cam(name, trips(cam, notes)));
      cam.close();
    }
    return cams;
  }

  private static List<TripPlan> trips(Section cam, Notes notes) {
    if (!(cam.raw("trip") instanceof TomlArray list)) {
      Section trip = cam.section("trip", TRIP);
      return trip.isPresent() ? List.of(trip(trip, notes)) : List.of();
    }
    if (list.size() != 2) {
      String points = list.size() == 1 ? "one trip point" : list.size() + " trip points";
      cam.wrong("trip", "a list of " + points, TRIP);
    }
    List<TripPlan> trips = new ArrayList<>();
    for (Section trip :
        cam.sections("trip", "tables such as { from = \"closed\", percent = 40, tolerance = 2 }")) {
      trips.add(trip(trip, notes));
    }
    return trips;
  }

  private static TripPlan trip(Section trip, Notes notes) {
    trip.require("from", "\"closed\" or \"open\"");
    trip.require("tolerance", "a tolerance in the unit of the trip point");
    if (!trip.has("turns") && !trip.has("percent")) {
      trip.require("turns", "turns or percent");
    }
    if (trip.has("turns") && trip.has("percent")) {
      notes.error(
          trip.path("percent"),
          "both turns and percent stand in %s, expected one of them".formatted(trip.where()));
    }
    boolean turns = trip.has("turns") || !trip.has("percent");
    Optional<End> from = trip.choice("from", ENDS);
    OptionalDouble distance = turns ? trip.number("turns", TURNS) : trip.number("percent", PERCENT);
    OptionalDouble tolerance =
        trip.number("tolerance", turns ? TOLERANCE_TURNS : TOLERANCE_PERCENT);
    trip.close();
    return new TripPlan(
        from.orElse(End.CLOSED),
        distance.orElse(0),
        tolerance.orElse(1),
        turns ? TripPlan.Unit.TURNS : TripPlan.Unit.PERCENT);
  }
}
