package tripline.travel;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tripline.job.End;
import tripline.measure.Estimate;
import tripline.measure.Part;
import tripline.measure.Shape;
import tripline.reduce.Movement.Grain;
import tripline.sample.Drive;

/**
 * Finds the hard stops of one position zero and pools their touches, of the most trusted source
 * only; a stop that was marked once and touched again counts all its touches.
 *
 * <p>What averages over touches: how each was felt (the sheet's {@code stop_u} is per touch) and
 * the noise at rest. What does not: one count of a coarse position channel, which the same stop
 * gives every time. Touches that scatter by far more than {@code stop_u} count with their own
 * scatter.
 */
final class HardStops {
  /** A mark this far inside the outermost one was pressed elsewhere, turns. */
  private static final double MARK_AGREE_TURNS = 0.15;

  /** Scatter beyond this many {@code stop_u} replaces it. */
  private static final double SCATTER_LIMIT = 2;

  private final Survey survey;
  private final List<Caveat> caveats;

  HardStops(Survey survey, List<Caveat> caveats) {
    this.survey = survey;
    this.caveats = caveats;
  }

  /** Stops that recordings of one frame touched. */
  Map<End, HardStop> of(int frame) {
    Map<End, HardStop> stops = new EnumMap<>(End.class);
    for (End end : End.values()) {
      List<Touch> touches = mostTrusted(end, frame);
      if (!touches.isEmpty()) {
        stops.put(end, pooled(end, touches));
      }
    }
    return stops;
  }

  private List<Touch> mostTrusted(End end, int frame) {
    List<Touch> marked = new ArrayList<>();
    List<Touch> seated = new ArrayList<>();
    for (int r = 0; r < survey.recordings().size(); r++) {
      if (survey.frames().frame(r) == frame) {
        MarkedStops.of(survey, r).stream().filter(t -> t.end() == end).forEach(marked::add);
        TorqueStops.of(survey, r).stream().filter(t -> t.end() == end).forEach(seated::add);
      }
    }
    List<Touch> plateaus =
        new PlateauStops(survey, frame)
            .touches(end).stream().filter(t -> passed(end, frame, t) <= mostPassed(end)).toList();
    List<Touch> agreeing = agreeing(end, notPassed(end, frame, marked));
    if (!agreeing.isEmpty()) {
      plateaus.stream().filter(t -> isUnmarkedTouch(end, t, agreeing)).forEach(agreeing::add);
      return agreeing;
    }
    return plateaus.isEmpty() ? seated : plateaus;
  }

  /** Touched again without pressing the mark: another touch of the same stop. */
  private boolean isUnmarkedTouch(End end, Touch plateau, List<Touch> marked) {
    double agree = PlateauStops.agreeTurns(survey.sheet().end(end));
    return marked.stream().noneMatch(plateau::isOfSameRestAs)
        && marked.stream()
            .anyMatch(m -> Math.abs(outward(end, m) - outward(end, plateau)) <= agree);
  }

  /** The valve cannot have gone beyond its stop: a mark that a hand stroke passed is none. */
  private List<Touch> notPassed(End end, int frame, List<Touch> marked) {
    List<Touch> stops = new ArrayList<>();
    for (Touch touch : marked) {
      double passed = passed(end, frame, touch);
      if (passed <= mostPassed(end)) {
        stops.add(touch);
      } else {
        Caveat caveat =
            new Caveat(
                isAtTheOther(end, frame, passed)
                    ? Caveat.Kind.ENDS_EXCHANGED
                    : Caveat.Kind.MARK_NOT_AT_STOP,
                touch.recording(),
                String.format(
                    Locale.ROOT,
                    "A mark %s-stop was passed by %.2f turns by hand and was not used.",
                    end.word(),
                    passed));
        if (!caveats.contains(caveat)) {
          caveats.add(caveat);
        }
      }
    }
    return stops;
  }

  /** What hand force may add to a stop, and a backoff still be judged from it, turns. */
  private double mostPassed(End end) {
    return MARK_AGREE_TURNS + survey.sheet().end(end).toleranceTurns();
  }

  private double passed(End end, int frame, Touch touch) {
    return furthestByHand(end, frame) - outward(end, touch);
  }

  private boolean isAtTheOther(End end, int frame, double passed) {
    return passed > (furthestByHand(end, frame) + furthestByHand(end.other(), frame)) / 2;
  }

  private double furthestByHand(End end, int frame) {
    double scale = survey.sheet().position().turnsPerUnit() * end.approach().sign();
    return survey.legs().stream()
        .filter(l -> survey.frames().frame(l.recording()) == frame)
        .filter(l -> l.direction() == end.approach() && survey.drive(l) == Drive.HAND)
        .mapToDouble(l -> l.to() * scale)
        .max()
        .orElse(Double.NEGATIVE_INFINITY);
  }

  /** The valve cannot have gone beyond its stop: marks far inside the outermost are slips. */
  private List<Touch> agreeing(End end, List<Touch> marked) {
    double outermost = marked.stream().mapToDouble(t -> outward(end, t)).max().orElse(0);
    List<Touch> agreeing = new ArrayList<>();
    for (Touch touch : marked) {
      double inside = outermost - outward(end, touch);
      if (inside <= MARK_AGREE_TURNS) {
        agreeing.add(touch);
      } else {
        caveats.add(
            new Caveat(
                Caveat.Kind.MARK_NOT_AT_STOP,
                touch.recording(),
                String.format(
                    Locale.ROOT,
                    "A mark %s-stop stands %.2f turns inside another one and was not used.",
                    end.word(),
                    inside)));
      }
    }
    return agreeing;
  }

  private double outward(End end, Touch touch) {
    return touch.rest().reading()
        * survey.sheet().position().turnsPerUnit()
        * end.approach().sign();
  }

  private HardStop pooled(End end, List<Touch> touches) {
    int n = touches.size();
    double mean = touches.stream().mapToDouble(t -> t.rest().reading()).average().orElseThrow();
    double feltU =
        survey.sheet().end(end).stopUTurns() / Math.abs(survey.sheet().position().turnsPerUnit());
    double squares = 0;
    double noise = 0;
    double counts = 0;
    for (Touch touch : touches) {
      squares += Math.pow(touch.rest().reading() - mean, 2);
      double square = Math.pow(touch.rest().u(), 2);
      noise += touch.rest().grain() == Grain.NOISE ? square : 0;
      counts += touch.rest().grain() == Grain.NOISE ? 0 : square;
    }
    double scatter = n > 1 ? Math.sqrt(squares / (n - 1)) : 0;
    double perTouch = Math.hypot(feltU, Math.sqrt(noise / n));
    double countU = Math.sqrt(counts / n);
    double most = SCATTER_LIMIT * Math.hypot(perTouch, countU);
    double u = (scatter > most ? scatter : perTouch) / Math.sqrt(n);
    Estimate reading =
        Estimate.of(mean, Part.common(PartNames.stop(end), u, Shape.NORMAL))
            .with(count(end, touches, countU, feltU));
    return new HardStop(end, reading, touches.get(0).source());
  }

  /**
   * What one count costs the mean of n touches. Touches that scatter by s let the errors of counts
   * of width q correlate by {@code exp(-(2 pi s / q)^2)} only: the first harmonic of the sawtooth
   * of rounding, seen through normal scatter.
   */
  private Part count(End end, List<Touch> touches, double countU, double feltU) {
    int n = touches.size();
    double width = 0;
    boolean anywhere = false;
    for (Touch touch : touches) {
      anywhere |= touch.rest().grain() == Grain.COUNT;
      width = Math.max(width, survey.recordings().get(touch.recording()).trace().quantum());
    }
    double alike = width == 0 ? 1 : Math.exp(-Math.pow(2 * Math.PI * feltU / width, 2));
    double u = countU * Math.sqrt((1 + (n - 1) * alike) / n);
    boolean single = anywhere && (n == 1 || alike > 0.5);
    return Part.common(PartNames.stopCount(end), u, single ? Shape.RECTANGULAR : Shape.NORMAL);
  }
}
