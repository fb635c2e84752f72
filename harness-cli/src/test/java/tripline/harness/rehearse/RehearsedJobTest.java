package tripline.harness.rehearse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tripline.StrokeAnalysis;
import tripline.harness.rehearse.script.BadLine;
import tripline.harness.rehearse.valve.Setting;
import tripline.harness.rehearse.valve.Truth;
import tripline.harness.rehearse.valve.VirtualValve;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.link.Encoding;
import tripline.link.Hello;
import tripline.link.LinkDecoder;
import tripline.link.LinkSamples;
import tripline.link.Start;
import tripline.link.Stop;
import tripline.link.Talk;
import tripline.measure.Decision;
import tripline.reduce.Reduction;
import tripline.reduce.ReductionSettings;
import tripline.result.Result;
import tripline.sample.Drive;
import tripline.travel.RecordingTrace;

/**
 * What a technician does, on a rig: stroke by hand, check, adjust, stroke again. The truth the rig
 * states must be what the analysis finds, within what the analysis says of its own uncertainty.
 */
class RehearsedJobTest {
  private final List<Reduction> reductions = new ArrayList<>();

  private Result result(JobSheet sheet) {
    List<RecordingTrace> traces = new ArrayList<>();
    for (Reduction reduction : reductions) {
      traces.add(
          new RecordingTrace("rig", "", Drive.HAND, RecordingTrace.Zero.KEPT, reduction.finish()));
    }
    return StrokeAnalysis.of(sheet, traces, Optional.empty());
  }

  private LinkSamples samples(JobSheet sheet) {
    return new LinkSamples(
        sheet.channels(),
        why -> {
          Reduction reduction =
              new Reduction(
                  new ReductionSettings(
                      sheet.channels(),
                      sheet.settleNs(),
                      sheet.position().skewNs(),
                      sheet.position().resolution(),
                      sheet.position().modulus(),
                      sheet.position().turnsPerUnit()));
          reductions.add(reduction);
          return reduction;
        });
  }

  @ParameterizedTest
  @CsvSource({
    "motor-right, 1, FRAMES, 0",
    "motor-right, 2, LINES, 4280",
    "right-coarse, 3, FRAMES, 0",
    "torque-seated, 4, LINES, 0",
    "motor-registered, 5, FRAMES, 4280"
  })
  void theAnalysisFindsTheTruthAndTheAdviceSetsItRight(
      String name, long seed, Encoding encoding, double uptimeS) throws BadLine {
    JobSheet sheet = ShippedSheets.of(name);
    LinkSamples samples = samples(sheet);
    LinkDecoder decoder = new LinkDecoder(samples);
    ScriptedRig bench =
        new ScriptedRig(
            new RigPlan(sheet, Setting.MIS_SET, seed, Kit.FULL, Encoding.FRAMES, uptimeS, 0),
            (bytes, length) -> decoder.accept(bytes, 0, length));
    int talk = (encoding == Encoding.LINES ? Talk.LINES : Talk.FRAMES).code();
    bench.send(new Hello(1, 0, talk), Encoding.FRAMES);
    bench.send(new Start(500_000, 20), encoding);
    strokes(bench);
    Result found = result(sheet);
    assertThat(found.decision()).isEqualTo(Decision.REJECT);
    agrees(found, bench.rig.valve());
    for (Result.CamResult cam : found.cams()) {
      if (cam.adjust() != null) {
        bench.play("adjust %s %.4f".formatted(cam.cam(), cam.adjust().turns()));
      }
    }
    bench.play("press adjusted");
    strokes(bench);
    bench.send(new Stop(), encoding);
    samples.finish();
    assertThat(decoder.counters().damaged() + decoder.counters().lost()).isZero();
    assertThat(samples.lateEvents()).isZero();
    assertThat(reductions).hasSize(1);
    Result left = result(sheet);
    agrees(left, bench.rig.valve());
    assertThat(left.findings()).noneMatch(f -> f.severity().equals("fault"));
    assertThat(left.decision()).isEqualTo(Decision.ACCEPT);
  }

  private static void strokes(ScriptedRig bench) throws BadLine {
    bench.play(
        "touch closed",
        "press closed-stop",
        "touch open",
        "press open-stop",
        "touch closed",
        "press closed-stop",
        "touch open",
        "wait 1");
  }

  /**
   * Within four standard uncertainties: of a few hundred figures here none should be outside. What
   * was passed while opening is known but for the least differential of a cam, which nothing can
   * tell from lost motion where the sensor is on the handwheel.
   */
  private static void agrees(Result result, VirtualValve valve) {
    double untold = Truth.leastDifferential(valve);
    assertThat(result.travel().span()).isNotNull();
    assertThat(result.travel().span().value())
        .isCloseTo(valve.build().spanTurns(), within(4 * result.travel().span().u() + untold));
    for (Result.CamResult cam : result.cams()) {
      int index = valve.build().camIndex(cam.cam());
      int point = "upper".equals(cam.edge()) ? 1 : 0;
      boolean opening = valve.build().cams().get(index).points().get(point).from() == End.OPEN;
      assertThat(cam.trip()).as(cam.cam()).isNotNull();
      assertThat(cam.trip())
          .as(cam.cam())
          .isCloseTo(valve.tripTurns(index, point), within(4 * cam.u() + (opening ? untold : 0)));
    }
  }

  @Test
  void aPoweredStrokeIsFoundAsItWas() throws BadLine {
    JobSheet sheet = ShippedSheets.motor();
    LinkSamples samples = samples(sheet);
    LinkDecoder decoder = new LinkDecoder(samples);
    ScriptedRig bench =
        new ScriptedRig(
            new RigPlan(sheet, Setting.RIGHT, 1, Kit.FULL, Encoding.FRAMES, 0, 0),
            (bytes, length) -> decoder.accept(bytes, 0, length));
    bench.send(new Hello(1, 0, 0), Encoding.FRAMES);
    bench.send(new Start(1_000_000, 20), Encoding.FRAMES);
    bench.play(
        "touch closed", "press closed-stop", "touch open", "press open-stop", "crank closed 1");
    bench.send(new Stop(), Encoding.FRAMES);
    RecordingTrace hand = trace(Drive.HAND, RecordingTrace.Zero.LOST);
    bench.send(new Start(1_000_000, 20), Encoding.FRAMES);
    int before = reductions.size();
    bench.play("wait 1", "run closed", "wait 1", "run open", "wait 1");
    bench.send(new Stop(), Encoding.FRAMES);
    samples.finish();
    assertThat(reductions).hasSize(before);
    Result result =
        StrokeAnalysis.of(
            sheet, List.of(hand, trace(Drive.MOTOR, RecordingTrace.Zero.KEPT)), Optional.empty());
    assertThat(result.ends().closed().stoppedBy()).isEqualTo("limit");
    assertThat(result.ends().open().stoppedBy()).isEqualTo("limit");
  }

  private RecordingTrace trace(Drive drive, RecordingTrace.Zero zero) {
    return new RecordingTrace("rig", "", drive, zero, reductions.get(0).finish());
  }
}
