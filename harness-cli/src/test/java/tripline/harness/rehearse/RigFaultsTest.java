package tripline.harness.rehearse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tripline.harness.rehearse.script.Action;
import tripline.harness.rehearse.script.BadLine;
import tripline.harness.rehearse.valve.Setting;
import tripline.job.End;
import tripline.job.JobSheet;
import tripline.link.BodySink;
import tripline.link.Encoding;
import tripline.link.Hello;
import tripline.link.Identity;
import tripline.link.LinkDecoder;
import tripline.link.LinkMessage;
import tripline.link.LinkSamples;
import tripline.link.LossCause;
import tripline.link.LossMessage;
import tripline.link.MarkMessage;
import tripline.link.MarkSource;
import tripline.link.MessageType;
import tripline.link.SinkSource;
import tripline.link.Start;
import tripline.link.Status;
import tripline.link.Stop;
import tripline.reduce.Reduction;
import tripline.reduce.ReductionSettings;

/**
 * Every fault that can be asked for shows on the host's side as what it is, and as nothing else.
 */
class RigFaultsTest {
  private static final JobSheet SHEET = ShippedSheets.motor();

  private final List<LinkMessage> seen = new ArrayList<>();
  private final List<SinkSource.Break> breaks = new ArrayList<>();
  private LinkSamples samples;
  private LinkDecoder decoder;
  private ScriptedRig bench;

  @BeforeEach
  void begin() {
    begin(0);
  }

  private void begin(int baud) {
    samples = new LinkSamples(SHEET.channels(), this::sink);
    decoder =
        new LinkDecoder(
            new BodySink() {
              @Override
              public void onBody(MessageType type, byte[] body, int length) {
                seen.add(LinkMessage.read(type, body));
                samples.onBody(type, body, length);
              }
            });
    bench =
        new ScriptedRig(
            new RigPlan(SHEET, Setting.MIS_SET, 1, Kit.FULL, Encoding.FRAMES, 0, baud),
            (bytes, length) -> decoder.accept(bytes, 0, length));
    bench.send(new Hello(1, 0, 0), Encoding.FRAMES);
    bench.send(new Start(1_000_000, 20), Encoding.FRAMES);
    bench.pass(0.5);
  }

  private Reduction sink(SinkSource.Break why) {
    breaks.add(why);
    return new Reduction(
        new ReductionSettings(
            SHEET.channels(), SHEET.settleNs(), 0, 0.0005, SHEET.position().modulus(), 1));
  }

  private <M extends LinkMessage> List<M> seen(Class<M> kind) {
    return seen.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private Status stop() {
    bench.send(new Stop(), Encoding.FRAMES);
    bench.pass(0.1);
    List<Status> all = seen(Status.class);
    return all.get(all.size() - 1);
  }

  @Test
  void withoutAFaultNothingIsMissing() {
    Status last = stop();
    assertThat(samples.rows()).isEqualTo(last.samples()).isGreaterThan(490);
    assertThat(decoder.counters().damaged() + decoder.counters().lost()).isZero();
    assertThat(last.messagesDropped() + last.samplesLost() + last.badReceived()).isZero();
  }

  @Test
  void messagesLostOnTheLineAreMissingFromSequenceAndNumbers() throws BadLine {
    bench.play("lose 3", "wait 1");
    Status last = stop();
    assertThat(decoder.counters().lost()).isEqualTo(3);
    assertThat(samples.lostOnLink()).isBetween(40L, 63L);
    assertThat(samples.rows() + samples.lostOnLink()).isEqualTo(last.samples());
    assertThat(last.messagesDropped()).isZero();
  }

  @Test
  void samplesMissedInTheLoggerAreAnnounced() throws BadLine {
    bench.play("overrun 7", "wait 0.5");
    Status last = stop();
    assertThat(samples.lostInLogger()).isEqualTo(7).isEqualTo(last.samplesLost());
    assertThat(samples.lostOnLink()).isZero();
    assertThat(seen(LossMessage.class))
        .singleElement()
        .satisfies(loss -> assertThat(loss.cause()).isEqualTo(LossCause.OVERRUN));
  }

  @Test
  void aShortStallDelaysEverythingAndLosesNothing() throws BadLine {
    long before = samples.rows();
    bench.play("stall 2", "wait 1.9");
    assertThat(samples.rows()).isEqualTo(before);
    bench.pass(0.5);
    Status last = stop();
    assertThat(samples.rows()).isEqualTo(last.samples());
    assertThat(seen(Status.class)).anyMatch(s -> s.backlog() > 100);
  }

  @Test
  void aLongStallLeavesOutRowsAndSaysHowManyButKeepsMarks() throws BadLine {
    bench.play("stall 40", "wait 35", "press note late", "wait 6");
    Status last = stop();
    assertThat(samples.lostInLogger()).isEqualTo(last.samplesLost()).isGreaterThan(10_000);
    assertThat(samples.rows() + samples.lostInLogger()).isEqualTo(last.samples());
    assertThat(seen(LossMessage.class))
        .isNotEmpty()
        .allSatisfy(loss -> assertThat(loss.cause()).isEqualTo(LossCause.QUEUE));
    assertThat(last.messagesDropped()).isZero();
    assertThat(seen(MarkMessage.class))
        .singleElement()
        .satisfies(mark -> assertThat(mark.source()).isEqualTo(MarkSource.BUTTON));
  }

  @Test
  void bitErrorsDamageMessagesInTheShareAskedFor() throws BadLine {
    long before = decoder.counters().bytes();
    bench.play("errors 0.0001", "wait 60", "errors 0");
    double bits = 8.0 * (decoder.counters().bytes() - before);
    bench.pass(0.1);
    double hit = decoder.counters().damaged();
    // Frames of about 75 bytes: hardly two errors in one; 4 standard deviations of a Poisson count.
    assertThat(hit).isCloseTo(bits * 1e-4, within(4 * Math.sqrt(bits * 1e-4) + 0.05 * hit));
    assertThat(decoder.counters().malformed() + decoder.counters().unknown()).isZero();
    assertThat(decoder.counters().lost()).isCloseTo((long) hit, within(10L));
  }

  @Test
  void aClockThatStepsBackEndsAStretchAndOneThatStepsForwardDoesNot() throws BadLine {
    bench.play("clock 2", "wait 0.5");
    assertThat(breaks).containsExactly(SinkSource.Break.FIRST);
    bench.play("clock -1", "wait 0.5");
    assertThat(breaks).containsExactly(SinkSource.Break.FIRST, SinkSource.Break.STEP_BACK);
  }

  @Test
  void aRestartIsANewSessionFromItsFirstMessage() throws BadLine {
    bench.play("restart", "wait 0.1");
    List<Identity> identities = seen(Identity.class);
    Identity after = identities.get(identities.size() - 1);
    assertThat(after.session()).isNotEqualTo(identities.get(0).session());
    assertThat(bench.rig.logger().running()).isFalse();
    assertThat(seen(Status.class).get(seen(Status.class).size() - 1).stampMicros()).isZero();
    assertThat(decoder.counters().restarts()).isOne();
  }

  @Test
  void anUnpluggedLoggerSamplesOnAndDescribesItselfOncePlugged() throws BadLine {
    int described = seen(Identity.class).size();
    long before = samples.rows();
    bench.play("unplug", "wait 2");
    assertThat(samples.rows()).isEqualTo(before);
    bench.play("plug", "wait 0.1");
    assertThat(seen(Identity.class)).hasSize(described + 1);
    Status last = stop();
    assertThat(samples.rows()).isEqualTo(last.samples()).isGreaterThan(2500);
    assertThat(breaks).hasSize(1);
  }

  @Test
  void aSlowLineCarriesNoMoreThanItsRate() {
    begin(9600);
    long before = decoder.counters().bytes();
    bench.pass(10);
    double perSecond = (decoder.counters().bytes() - before) / 10.0;
    assertThat(perSecond).isBetween(900.0, 961.0);
    // 1 kHz does not fit; what is left out is announced.
    Status last = stop();
    bench.pass(60);
    assertThat(seen(LossMessage.class)).isNotEmpty();
    assertThat(decoder.counters().damaged() + decoder.counters().lost()).isZero();
    assertThat(last).isNotNull();
  }

  @Test
  void linesForLaterDoNotHoldUpTheOthers() throws BadLine {
    bench.play("after 3 lose 2", "after 1 press note early", "touch closed");
    assertThat(decoder.counters().lost()).isEqualTo(2);
    assertThat(seen(MarkMessage.class)).hasSize(1);
    assertThat(bench.said).hasSize(1);
  }

  @Test
  void somebodyAtTheKeyboardIsObeyedAtOnce() {
    bench.director.atOnce(new Action.Run(End.OPEN));
    bench.pass(2);
    assertThat(bench.rig.valve().turnsPerS()).isGreaterThan(0.5);
    bench.director.atOnce(new Action.Run(End.CLOSED));
    bench.pass(2);
    assertThat(bench.rig.valve().turnsPerS()).isLessThan(-0.5);
    bench.director.atOnce(new Action.Halt());
    bench.pass(1);
    assertThat(bench.rig.valve().turnsPerS()).isZero();
    assertThat(bench.said).hasSize(2);
  }

  @Test
  void awaitWaitsForTheHost() throws BadLine {
    bench.follow("await stop", "touch closed");
    bench.pass(5);
    assertThat(bench.rig.moving()).isFalse();
    stop();
    bench.pass(1);
    assertThat(bench.rig.moving()).isTrue();
  }
}
