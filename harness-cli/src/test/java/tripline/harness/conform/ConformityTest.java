package tripline.harness.conform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tripline.harness.failure.LinkFailure;
import tripline.harness.rehearse.Kit;
import tripline.harness.rehearse.RigPlan;
import tripline.harness.rehearse.ShippedSheets;
import tripline.harness.rehearse.valve.Setting;
import tripline.harness.serial.ByteLine;
import tripline.link.Answer;
import tripline.link.ChannelDescription;
import tripline.link.Encoding;
import tripline.link.Identity;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;
import tripline.link.MessageType;
import tripline.link.Result;
import tripline.link.Start;

class ConformityTest {
  private static RigPlan plan(Encoding talks, double uptimeS) {
    return new RigPlan(ShippedSheets.motor(), Setting.MIS_SET, 1, Kit.FULL, talks, uptimeS, 0);
  }

  private static Report examine(RigLine line, Optional<Runnable> power) {
    return new Conformity("rig", () -> line, line, ns -> {}, 115200).examine(power);
  }

  private static Report examine(Broken broken) {
    return examine(new RigLine(plan(Encoding.FRAMES, 0), broken), Optional.empty());
  }

  private static Set<Duty> standing(Report report, Outcome outcome) {
    EnumSet<Duty> duties = EnumSet.noneOf(Duty.class);
    for (Report.Line line : report.lines()) {
      if (line.outcome() == outcome) {
        duties.add(line.duty());
      }
    }
    return duties;
  }

  private static String text(Report report) {
    StringWriter text = new StringWriter();
    ConformText.write(report, new PrintWriter(text));
    return text.toString();
  }

  @ParameterizedTest
  @EnumSource(Encoding.class)
  void theRehearsalLoggerKeepsEveryDuty(Encoding talks) {
    RigLine line = new RigLine(plan(talks, 4280), new Broken());
    Report report = examine(line, Optional.of(() -> line.rig().logger().restart(line.getAsLong())));
    assertThat(standing(report, Outcome.FAILS)).as(text(report)).isEmpty();
    assertThat(standing(report, Outcome.NOT_SEEN)).as(text(report)).isEmpty();
    assertThat(standing(report, Outcome.NOT_TRIED)).containsExactly(Duty.REPEATS);
  }

  /** Marks of the host's own are told by; edges are not, where no contact is operated. */
  @Test
  void edgesAreNotSeenWhereNoContactChanges() {
    RigLine line = new RigLine(plan(Encoding.FRAMES, 0), new Broken(), RigLine.Valve.LEFT_ALONE);
    Report report = examine(line, Optional.empty());
    assertThat(standing(report, Outcome.FAILS)).as(text(report)).isEmpty();
    assertThat(standing(report, Outcome.NOT_SEEN)).containsExactly(Duty.CHANGES);
    assertThat(text(report)).contains("no contact that reports edges changed: operate one");
  }

  /** What it has no ability for is not held against it. */
  @Test
  void aSmallLoggerKeepsTheDutiesItHas() {
    RigPlan small =
        new RigPlan(ShippedSheets.motor(), Setting.RIGHT, 2, Kit.SMALL, Encoding.LINES, 0, 115200);
    Report report = examine(new RigLine(small, new Broken()), Optional.empty());
    assertThat(standing(report, Outcome.FAILS)).as(text(report)).isEmpty();
    assertThat(standing(report, Outcome.NOT_SEEN)).as(text(report)).isEmpty();
    assertThat(standing(report, Outcome.NOT_TRIED))
        .containsExactly(
            Duty.POWER_UP,
            Duty.REPEATS,
            Duty.PROMPT,
            Duty.BEFORE,
            Duty.STORED,
            Duty.STREAM,
            Duty.BOTH_WAYS);
  }

  @ParameterizedTest
  @EnumSource(BrokenLoggers.class)
  void aBrokenLoggerFailsOnItsOwnLineAndOnNoOther(BrokenLoggers broken) {
    Report report = examine(broken.make());
    assertThat(standing(report, Outcome.FAILS)).as(text(report)).containsExactly(broken.duty);
    for (Report.Line line : report.lines()) {
      assertThat(line.seen().isEmpty()).as(text(report)).isEqualTo(line.outcome() == Outcome.HOLDS);
    }
  }

  /** Every duty has a broken logger, but those that listening or a power cycle tells of. */
  @Test
  void everyDutyCanFail() {
    EnumSet<Duty> broken = EnumSet.of(Duty.POWER_UP, Duty.REPEATS);
    for (BrokenLoggers logger : BrokenLoggers.values()) {
      broken.add(logger.duty);
    }
    assertThat(broken).containsExactly(Duty.values());
  }

  /** Powered up, it says nothing until it is asked. */
  @Test
  void aLoggerThatDoesNotSayThatItWasSwitchedOnFailsThere() {
    boolean[] restarted = new boolean[1];
    Broken silent =
        new Broken() {
          @Override
          void message(LinkMessage message) {
            if (!restarted[0]) {
              say(message);
            }
          }

          @Override
          byte[] toLogger(byte[] bytes, long atNs) {
            restarted[0] = false;
            return super.toLogger(bytes, atNs);
          }
        };
    RigLine line = new RigLine(plan(Encoding.FRAMES, 0), silent);
    Report report =
        examine(
            line,
            Optional.of(
                () -> {
                  restarted[0] = true;
                  line.rig().logger().restart(line.getAsLong());
                }));
    assertThat(standing(report, Outcome.FAILS)).as(text(report)).containsExactly(Duty.POWER_UP);
  }

  @Test
  void aLoggerThatWasNotSwitchedOffIsNotSeen() {
    RigLine line = new RigLine(plan(Encoding.FRAMES, 0), new Broken());
    Report report = examine(line, Optional.of(() -> {}));
    assertThat(standing(report, Outcome.NOT_SEEN)).containsExactly(Duty.POWER_UP);
  }

  /** Describes itself again and again, and hears nothing; samples from power-up, if it does. */
  private static final class Deaf extends Broken {
    private final List<LinkMessage> description = new java.util.ArrayList<>();
    private final long everyNs;
    private long dueNs;
    private boolean started;

    Deaf(long everyNs, boolean samples) {
      this.everyNs = everyNs;
      started = !samples;
    }

    @Override
    void message(LinkMessage message) {
      if (message instanceof Identity || message instanceof ChannelDescription) {
        description.add(message);
      }
      if (!(message instanceof Answer)) {
        say(message);
      }
    }

    @Override
    byte[] toLogger(byte[] bytes, long atNs) {
      super.toLogger(bytes, atNs);
      boolean starts = !started;
      started = true;
      return starts ? encoded(new Start(0, 20), new LinkEncoder()) : new byte[0];
    }

    @Override
    void tick() {
      if (nowNs() >= dueNs) {
        dueNs = nowNs() + everyNs;
        description.forEach(this::say);
      }
    }
  }

  @Test
  void aLoggerThatCannotReceiveIsHeardOut() {
    Report kept = examine(new Deaf(8_000_000_000L, true));
    assertThat(standing(kept, Outcome.FAILS)).as(text(kept)).isEmpty();
    assertThat(standing(kept, Outcome.HOLDS)).contains(Duty.REPEATS, Duty.SEQUENCE);
    assertThat(standing(kept, Outcome.NOT_TRIED)).contains(Duty.HELLO, Duty.STORED);
    Report broken = examine(new Deaf(14_000_000_000L, true));
    assertThat(standing(broken, Outcome.FAILS)).containsExactly(Duty.REPEATS);
    Report idle = examine(new Deaf(8_000_000_000L, false));
    assertThat(standing(idle, Outcome.FAILS)).containsExactly(Duty.REPEATS);
    assertThat(text(idle)).contains("not one sample in 21 s");
  }

  /** In the midst of something else, as it may say (SPEC §6). */
  @Test
  void aLoggerThatIsBusyIsAskedAgain() {
    Broken busy =
        new Broken() {
          private int commands;

          @Override
          void message(LinkMessage message) {
            if (message instanceof Answer a
                && a.commandCode() == MessageType.RATE.code()
                && a.result() == Result.DONE
                && commands++ == 0) {
              say(new Answer(a.commandCode(), Result.BUSY.code(), a.to(), 0));
            } else {
              say(message);
            }
          }
        };
    Report report = examine(busy);
    assertThat(standing(report, Outcome.FAILS)).as(text(report)).isEmpty();
  }

  @Test
  void wherNobodySpeaksIsALinkFailure() {
    long[] now = new long[1];
    ByteLine dead =
        new ByteLine() {
          @Override
          public String name() {
            return "dead";
          }

          @Override
          public int read(byte[] into) {
            now[0] += 100_000_000L;
            return 0;
          }

          @Override
          public void write(byte[] bytes, int length) {}

          @Override
          public void close() {}
        };
    assertThatThrownBy(
            () ->
                new Conformity("dead", () -> dead, () -> now[0], ns -> {}, 115200)
                    .examine(Optional.empty()))
        .isInstanceOf(LinkFailure.class)
        .hasMessage("dead: no logger answers on this port, not a byte came");
  }
}
