package tripline.harness.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.Test;
import tripline.capture.CaptureEnd;
import tripline.capture.LineChange;
import tripline.harness.failure.LinkFailure;
import tripline.harness.failure.OutputFailure;
import tripline.harness.terminal.Press;
import tripline.link.Ability;
import tripline.link.Reports;
import tripline.link.Result;

/** By a clock of its own, so that a minute of capture takes no time. */
class CapturingTest {
  private final Rig rig = new Rig();

  @Test
  void everySampleIsKeptAndTheEndIsOrderly() {
    CaptureSummary summary = rig.end(60_000).run();
    Replay replay = rig.replay();
    assertThat(replay.rows()).isEqualTo(rig.logger.number()).isBetween(59_000L, 60_000L);
    assertThat(replay.losses).isEmpty();
    assertThat(replay.decoder.ended()).isTrue();
    assertThat(replay.samples.end().orElseThrow().reason()).isEqualTo(CaptureEnd.Reason.ASKED);
    assertThat(replay.samples.counters().pending()).isZero();
    assertThat(summary.progress().rows()).isEqualTo(replay.rows());
    assertThat(summary.receivedBytes()).isEqualTo(replay.samples.counters().bytes());
    assertThat(rig.logger.heard).containsExactly("hello", "time", "start", "stop");
    assertThat(rig.progress().rowsPerS()).isBetween(950.0, 1050.0);
  }

  /** As where the sheet does not fit the logger. */
  @Test
  void whatIsAbandonedIsNotLeftSampling() {
    Capturing begun = rig.begun();
    begun.abandon();
    begun.abandon();
    assertThat(rig.logger.heard).containsExactly("hello", "time", "start", "stop");
  }

  @Test
  void anUnpluggedLoggerThatGoesOnIsMissedToTheSample() {
    CaptureSummary summary = rig.unplug(10_000, 3_000).end(20_000).run();
    Replay replay = rig.replay();
    assertThat(replay.rowsByStretch).hasSize(1);
    assertThat(replay.losses).hasSize(1);
    assertThat(replay.losses.get(0)).isBetween(2_700L, 3_400L);
    assertThat(replay.rows() + replay.losses.get(0)).isEqualTo(rig.logger.number());
    assertThat(summary.progress().lost()).isEqualTo(replay.losses.get(0));
    assertThat(summary.gapMicros()).isBetween(2_900_000L, 3_400_000L);
    assertThat(replay.samples.gaps())
        .hasSize(1)
        .allMatch(g -> g.cause() == LineChange.Cause.UNPLUGGED);
    assertThat(rig.logger.heard).containsExactly("hello", "time", "start", "hello", "time", "stop");
    assertThat(rig.said)
        .contains("rig: the line is lost (unplugged); all so far is kept, waiting for it")
        .anyMatch(s -> s.startsWith("rig: the logger is back after 3."));
  }

  /** At moments of every kind: between blocks, within one, during the greeting. */
  @Test
  void fiftyUnplugsMakeOneFileWithEveryGapMarkedAndTheRestComplete() {
    Random random = new Random(50);
    long at = 1_000;
    for (int i = 0; i < 50; i++) {
      long away = 20L + random.nextInt(1_500);
      rig.unplug(at, away);
      at += away + 700L + random.nextInt(2_000);
    }
    CaptureSummary summary = rig.end(at).run();
    Replay replay = rig.replay();
    long missed = replay.losses.stream().mapToLong(Long::longValue).sum();
    assertThat(replay.rows() + missed).isEqualTo(rig.logger.number());
    assertThat(replay.samples.gapCount()).isEqualTo(summary.progress().gaps()).isEqualTo(50);
    assertThat(replay.losses).hasSizeBetween(40, 50).allMatch(n -> n > 0);
    assertThat(replay.rowsByStretch).hasSize(1);
    assertThat(replay.decoder.ended()).isTrue();
  }

  @Test
  void aLoggerSwitchedOffAndOnBeginsAnotherStretch() {
    rig.unplug(10_000, 3_000).at(11_000, rig.logger::powerCycle).end(20_000).run();
    Replay replay = rig.replay();
    assertThat(replay.rowsByStretch).hasSize(2);
    assertThat(replay.losses).isEmpty();
    assertThat(replay.rowsByStretch.get(1)).isEqualTo(rig.logger.number());
    assertThat(rig.logger.heard)
        .containsExactly("hello", "time", "start", "hello", "time", "start", "stop");
  }

  @Test
  void aLoggerThatFallsSilentIsGreetedAnew() {
    rig.at(10_000, () -> rig.frozen = true).at(18_000, () -> rig.frozen = false).end(30_000).run();
    Replay replay = rig.replay();
    assertThat(replay.samples.gaps())
        .hasSize(1)
        .allMatch(g -> g.cause() == LineChange.Cause.SILENT);
    assertThat(replay.rows() + replay.losses.get(0)).isEqualTo(rig.logger.number());
    assertThat(rig.said).anyMatch(s -> s.contains("(the logger fell silent)"));
  }

  @Test
  void marksOfKeysAndOfTheButtonAreStampedByTheLogger() {
    CaptureSummary summary =
        rig.press(2_000, Press.Key.CLOSED_STOP, "")
            .press(3_000, Press.Key.OPEN_STOP, "")
            .press(4_000, Press.Key.ADJUSTED, "")
            .press(5_000, Press.Key.NOTE, "cover \"off\"")
            .press(5_500, Press.Key.UNKNOWN, "x")
            .at(6_000, () -> rig.logger.press(1))
            .press(7_000, Press.Key.QUIT, "")
            .run();
    Replay replay = rig.replay();
    assertThat(replay.marks)
        .containsExactly(
            "CLOSED_STOP closed-stop",
            "OPEN_STOP open-stop",
            "ADJUSTED adjusted",
            "NOTE cover \"off\"",
            "CLOSED_STOP closed-stop");
    assertThat(summary.progress().marks()).isEqualTo(5);
    assertThat(rig.said)
        .anyMatch(s -> s.startsWith("closed-stop marked at 2."))
        .contains("no such key; c closed stop, o open stop, a adjusted, n note, q end");
  }

  @Test
  void marksOfALoggerThatTakesNoneStandBetweenItsSamples() {
    rig.logger.abilities &= ~(int) Ability.PLACE.bit();
    rig.press(2_000, Press.Key.CLOSED_STOP, "").press(2_100, Press.Key.NOTE, "n").end(4_000).run();
    assertThat(rig.replay().marks).containsExactly("CLOSED_STOP closed-stop", "NOTE n");
    assertThat(rig.logger.heard).doesNotContain("place");
  }

  @Test
  void aMarkThatReachesNobodyInTimeStaysANote() {
    CaptureSummary summary =
        rig.unplug(2_000, 2_000)
            .press(3_000, Press.Key.CLOSED_STOP, "")
            .at(6_000, () -> rig.logger.placeResult = Result.FAILED)
            .press(6_500, Press.Key.OPEN_STOP, "")
            .end(8_000)
            .run();
    Replay replay = rig.replay();
    assertThat(replay.marks)
        .containsExactly(
            "NOTE closed-stop pressed while the logger was out of reach",
            "NOTE open-stop pressed while the logger was out of reach");
    assertThat(replay.samples.lateMarks()).isEqualTo(2);
    assertThat(rig.said).anyMatch(s -> s.startsWith("open-stop NOT marked: it did not reach"));
    assertThat(summary.progress().marks()).isEqualTo(2);
  }

  @Test
  void aLoggerOfEdgesOnlyIsStartedAnewSoThatItStatesItsContacts() {
    rig.logger.reports = Reports.EDGES;
    rig.unplug(3_000, 1_000).end(8_000).run();
    assertThat(rig.logger.heard)
        .containsExactly("hello", "time", "start", "hello", "time", "stop", "start", "stop");
  }

  @Test
  void oneThatRunsAlreadyIsStoppedAndStarted() {
    rig.logger.running = true;
    rig.end(3_000).run();
    assertThat(rig.logger.heard).containsExactly("hello", "time", "stop", "start", "stop");
    assertThat(rig.replay().losses).isEmpty();
  }

  @Test
  void aRateIsAskedForBeforeTheStart() {
    rig.rate = 50_000;
    rig.end(1_000).run();
    assertThat(rig.logger.heard).containsExactly("hello", "time", "rate", "start", "stop");
  }

  @Test
  void aLoggerThatDoesNotStartIsSaidToRefuse() {
    rig.logger.startResult = Result.NOT_NOW;
    assertThatThrownBy(() -> rig.end(1_000).run())
        .isInstanceOf(LinkFailure.class)
        .hasMessage("rig: the logger refuses the command start: not-now");
  }

  @Test
  void nobodyThereIsOneLine() {
    rig.logger.deaf = true;
    assertThatThrownBy(() -> rig.end(1_000).run())
        .isInstanceOf(LinkFailure.class)
        .hasMessage("rig: no logger answers on this port, not a byte came");
  }

  @Test
  void anotherLoggerOnTheSameLineIsNoticed() {
    rig.unplug(3_000, 1_000)
        .at(
            3_500,
            () -> {
              rig.logger.serial = "0002";
              rig.logger.powerCycle();
            })
        .end(6_000)
        .run();
    assertThat(rig.said).contains("rig: it is another one: Sim 0002, not Sim 0001");
  }

  @Test
  void samplesThatDoNotComeAreMissed() {
    rig.at(5_000, () -> rig.logger.dry = true).end(20_000).run();
    assertThat(rig.said).containsOnlyOnce("rig: the logger is there, but no samples come");
  }

  @Test
  void anEndWhileTheLineIsLostIsAnEnd() {
    CaptureSummary summary = rig.unplug(5_000, 60_000).end(9_000).run();
    Replay replay = rig.replay();
    assertThat(replay.decoder.ended()).isTrue();
    assertThat(replay.samples.gapCount()).isEqualTo(1);
    assertThat(summary.gapMicros()).isBetween(3_500_000L, 4_500_000L);
  }

  /** Wherever the disk is full: one line, and all before it is there. */
  @Test
  void aFullDiskCostsNothingThatWasWritten() {
    rig.unplug(1_200, 500).end(3_000).run();
    byte[] whole = rig.disk.toByteArray();
    Random random = new Random(3);
    for (int i = 0; i < 60; i++) {
      Rig small = new Rig();
      small.diskRoom = i < 20 ? 150 + i * 10 : 150 + random.nextInt(whole.length - 160);
      assertThatThrownBy(() -> small.unplug(1_200, 500).end(3_000).run())
          .isInstanceOf(OutputFailure.class)
          .hasMessageMatching("capture: the disk is full; all up to \\d+\\.\\d s is kept");
      byte[] kept = small.disk.toByteArray();
      assertThat(kept).hasSize((int) small.diskRoom);
      assertThat(whole).startsWith(kept);
      Replay replay = small.replay();
      assertThat(replay.decoder.counters().damaged()).isZero();
      assertThat(replay.decoder.counters().missingBytes()).isZero();
      assertThat(replay.decoder.ended()).isFalse();
    }
  }
}
