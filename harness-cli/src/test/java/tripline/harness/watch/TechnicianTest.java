package tripline.harness.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tripline.capture.CaptureBegin;
import tripline.capture.CaptureEncoder;
import tripline.capture.CaptureFormat;
import tripline.capture.LineChange;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.LiveCapture;
import tripline.harness.rehearse.Kit;
import tripline.harness.rehearse.RigPlan;
import tripline.harness.rehearse.ScriptedRig;
import tripline.harness.rehearse.script.BadLine;
import tripline.harness.rehearse.valve.Setting;
import tripline.harness.rehearse.valve.Truth;
import tripline.harness.report.Glyphs;
import tripline.link.Encoding;
import tripline.link.Hello;
import tripline.link.Start;
import tripline.live.Guide;
import tripline.live.LiveAnswer;
import tripline.live.Now;
import tripline.live.Whereabouts;
import tripline.measure.Decision;
import tripline.sample.Drive;

/**
 * Somebody who reads the screen of a watch and does that and nothing else, at a rehearsal's valve
 * that was found wrong: it ends with a valve that is set right, by the valve's own account.
 */
class TechnicianTest {
  private static final int MOST_STEPS = 80;

  /** How far an adjuster turns between two looks at its contact, turns of the trip point. */
  private static final double A_LOOK_TURNS = 0.01;

  private static final Pattern TURN = Pattern.compile("[Tt]urn toward (\\w+): ([0-9.]+) turn");
  private static final Pattern ADJUST =
      Pattern.compile("Watch (\\S+) and turn the adjuster of cam (\\S+) until");
  private static final Pattern WAY = Pattern.compile("(the way|the other way from how) it turns");

  private final CaptureEncoder encoder = new CaptureEncoder();
  private final List<String> read = new ArrayList<>();
  private JobFile job;
  private LiveCapture live;
  private ScriptedRig bench;
  private LiveAnswer answer;

  private void keep() {
    live.onBytes(encoder.bytes(), encoder.length());
  }

  private void begin(String name, long seed) {
    job =
        JobFile.read(Path.of(System.getProperty("tripline.root"), "recordings", name, "job.toml"));
    live = new LiveCapture("live", job);
    encoder.begin(
        new CaptureBegin(
            CaptureFormat.MAJOR,
            CaptureFormat.MINOR,
            Optional.of(Drive.HAND),
            Optional.empty(),
            1,
            "0".repeat(64),
            "",
            "",
            "",
            ""));
    keep();
    encoder.line(0, new LineChange(LineChange.Event.OPENED, LineChange.Cause.NONE, 0, ""));
    keep();
    bench =
        new ScriptedRig(
            new RigPlan(job.sheet(), Setting.MIS_SET, seed, Kit.FULL, Encoding.FRAMES, 0, 0),
            (bytes, length) -> {
              encoder.received(bench.rig.nowNs() / 1000, bytes, 0, length);
              keep();
            });
    bench.send(new Hello(1, 0, 0), Encoding.FRAMES);
    bench.send(new Start(500_000, 20), Encoding.FRAMES);
    bench.pass(1);
  }

  private Words screen() {
    answer = LiveAnswer.of(job.sheet(), live.traces(), Optional.empty());
    Now now = live.latest().orElseThrow().now();
    Optional<Whereabouts> where = Whereabouts.of(answer, now);
    return Words.of(Guide.next(answer, where, now), where, answer.result(), Glyphs.UNICODE);
  }

  private boolean closed(String contact) {
    String channel =
        job.sheet().contacts().stream()
            .filter(c -> c.name().equals(contact))
            .findFirst()
            .orElseThrow()
            .channel();
    int bit = job.sheet().channels().indexOf(channel);
    return (live.latest().orElseThrow().now().closed() >> bit & 1) != 0;
  }

  @ParameterizedTest
  @CsvSource({
    "right-fine, 3",
    "right-fine, 9",
    "right-coarse, 2",
    "right-coarse, 5",
    "motor-right, 4"
  })
  void whoeverDoesOnlyWhatTheScreenSaysSetsTheValveRight(String name, long seed) throws BadLine {
    begin(name, seed);
    assertThat(Truth.of(bench.rig.valve())).anyMatch(l -> l.endsWith(": wrong"));
    Words words = screen();
    for (int k = 0; k < MOST_STEPS && !words.title().equals("ACCEPTED"); k++) {
      read.add(words.title());
      follow(words);
      words = screen();
    }
    assertThat(words.title()).as("%s", read).isEqualTo("ACCEPTED");
    assertThat(answer.result().decision()).isEqualTo(Decision.ACCEPT);
    assertThat(Truth.of(bench.rig.valve())).noneMatch(l -> l.endsWith(": wrong"));
    assertThat(read).contains("CLOSED END: TURN NOW", "OPEN END: TURN NOW");
  }

  private void follow(Words words) throws BadLine {
    String all = words.title() + " " + words.act() + " " + String.join(" ", words.why());
    String end = all.contains("toward closed") ? "closed" : "open";
    if (words.title().endsWith("IS THIS THE STOP?")) {
      bench.play(words.act().contains("press c") ? "press closed-stop" : "press open-stop");
    } else if (words.title().endsWith("FIND THE STOP") || words.title().equals("FIND A STOP")) {
      bench.play("touch " + end);
    } else if (words.title().equals("BOTH ENDS ARE RIGHT")) {
      bench.play("touch open", "wait 2", "touch closed", "wait 2", "touch open");
    } else if (words.title().endsWith("TURN NOW")) {
      adjust(all, end);
      return;
    } else {
      if (words.act().contains("press a")) {
        bench.play("press adjusted");
      }
      Matcher turn = TURN.matcher(all);
      assertThat(turn.find()).as(all).isTrue();
      double past = all.contains("on past the point") ? 0.3 : 0;
      double turns = Double.parseDouble(turn.group(2)) + past;
      bench.play("crank %s %.2f".formatted(turn.group(1), turns));
    }
    bench.pass(2);
  }

  private void adjust(String all, String end) throws BadLine {
    Matcher what = ADJUST.matcher(all);
    Matcher way = WAY.matcher(all);
    assertThat(what.find() && way.find()).as(all).isTrue();
    double with = end.equals("closed") ? A_LOOK_TURNS : -A_LOOK_TURNS;
    boolean against = way.group(1).startsWith("the other");
    turnUntilItChanges(what.group(1), what.group(2), against ? -with : with);
    if (all.contains("; pause, then back")) {
      bench.pass(1);
      turnUntilItChanges(what.group(1), what.group(2), with);
    }
    bench.pass(0.3);
  }

  private void turnUntilItChanges(String contact, String cam, double aLook) throws BadLine {
    boolean was = closed(contact);
    for (int k = 0; k < 400 && closed(contact) == was; k++) {
      bench.play("adjust %s %.3f".formatted(cam, aLook));
      bench.pass(0.05);
    }
    assertThat(closed(contact)).as("contact %s of cam %s", contact, cam).isNotEqualTo(was);
  }
}
