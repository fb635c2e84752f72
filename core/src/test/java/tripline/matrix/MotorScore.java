package tripline.matrix;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.cases.Recording;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.result.Result;
import tripline.result.Result.Measured;
import tripline.result.Result.StrokeResult;
import tripline.sample.Drive;
import tripline.truth.PoweredStroke;
import tripline.truth.PoweredStroke.Cause;

/**
 * Powered strokes against the truth: {@code MotorScore [VALVES]}: what stopped them, with torque
 * and motor channels and without; whether the 95 % intervals hold the true coast and margin. Half
 * of the valves are right, half are stopped on torque.
 */
public final class MotorScore {
  private static final long FIRST_SEED = 5000;

  int strokes;
  int right;
  int unknown;
  int coasts;
  int coastsHeld;
  int margins;
  int marginsHeld;
  final List<String> wrong = new ArrayList<>();

  private MotorScore() {}

  public static void main(String[] args) {
    int valves = args.length > 0 ? Integer.parseInt(args[0]) : 600;
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    for (Wiring wiring : Wiring.values()) {
      MotorScore score = of(wiring, valves);
      out.println(wiring.words + ": " + score.text());
      score.wrong.stream().limit(20).forEach(out::println);
    }
  }

  /** Which channels the logger reads besides the contacts. */
  enum Wiring {
    ALL("torque and motor channels"),
    BARE("position contacts only");

    private final String words;

    Wiring(String words) {
      this.words = words;
    }

    private JobSheet of(JobSheet sheet) {
      return this == ALL
          ? sheet
          : new JobSheet(
              sheet.job(),
              sheet.travel(),
              sheet.position(),
              sheet.settleNs(),
              sheet.closed(),
              sheet.open(),
              sheet.cams(),
              sheet.contacts(),
              sheet.acceptance(),
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              Optional.empty());
    }
  }

  static MotorScore of(Wiring wiring, int valves) {
    MotorScore score = new MotorScore();
    for (long seed = FIRST_SEED; seed < FIRST_SEED + valves; seed++) {
      Setup setup = new Setup(seed);
      Specimen specimen = seed % 2 == 0 ? Faults.healthy(setup) : Faults.torque(setup);
      JobSheet sheet = wiring.of(specimen.sheet());
      score.add(seed, specimen.recordings(), Answer.of(sheet, specimen.recordings()));
    }
    return score;
  }

  private void add(long seed, List<Recording> recordings, Result result) {
    for (int r = 0; r < recordings.size(); r++) {
      Recording recording = recordings.get(r);
      if (recording.drive() != Drive.MOTOR) {
        continue;
      }
      List<StrokeResult> seen = result.recordings().get(r).strokes();
      for (int k = 0; k < recording.powered().size(); k++) {
        stroke(seed, recording, recording.powered().get(k), k < seen.size() ? seen.get(k) : null);
      }
    }
  }

  private void stroke(
      long seed, Recording recording, PoweredStroke truth, @Nullable StrokeResult seen) {
    String said = seen == null ? "no stroke" : String.valueOf(seen.stoppedBy());
    String want = truth.cause().name().toLowerCase(Locale.ROOT);
    strokes++;
    if (said.equals(want)) {
      right++;
    } else if (said.equals("unknown")) {
      unknown++;
    } else {
      wrong.add("  seed " + seed + ": " + said + " instead of " + want);
    }
    if (seen == null || truth.cause() != Cause.LIMIT) {
      return;
    }
    Measured coast = seen.coast();
    if (coast != null) {
      coasts++;
      coastsHeld += Math.abs(coast.value() - truth.coast()) <= coast.u95() ? 1 : 0;
    }
    Measured margin = seen.motor() == null ? null : seen.motor().margin();
    if (margin != null) {
      double span = recording.actuator().plan().spanTurns();
      double left = truth.toward() == End.CLOSED ? truth.stillX() : span - truth.stillX();
      margins++;
      marginsHeld += Math.abs(margin.value() - left) <= margin.u95() ? 1 : 0;
    }
  }

  String text() {
    return String.format(
        Locale.ROOT,
        "%d strokes, cause right %d, unknown %d, wrong %d; 95 %% intervals hold the coast in %.1f %%"
            + " of %d, the margin in %.1f %% of %d",
        strokes,
        right,
        unknown,
        wrong.size(),
        100.0 * coastsHeld / coasts,
        coasts,
        100.0 * marginsHeld / margins,
        margins);
  }
}
