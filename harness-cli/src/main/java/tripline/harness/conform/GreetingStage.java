package tripline.harness.conform;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tripline.harness.failure.LinkFailure;
import tripline.harness.serial.LineGone;
import tripline.link.Ability;
import tripline.link.Answer;
import tripline.link.ChannelDescription;
import tripline.link.ChannelKind;
import tripline.link.Encoding;
import tripline.link.Hello;
import tripline.link.Identity;
import tripline.link.LinkMessage;
import tripline.link.LoggerState;
import tripline.link.MessageType;
import tripline.link.Result;
import tripline.link.SampleBlock;
import tripline.link.Status;
import tripline.link.Stop;

/** Who is there, and whether it says so as it should (SPEC §6, H1, L2, L3). */
final class GreetingStage {
  /** What a logger says on its own when the line is opened has come by then. */
  private static final long SETTLES_NS = 700_000_000L;

  /** Twice the ten seconds of SPEC L2, and a little. */
  private static final long REPEATS_NS = 21_000_000_000L;

  private static final byte[] OPENING = {'\n', 0, 0};
  private static final Hello HELLO = new Hello(1, 0, 0);

  private final Exam exam;
  private final Talker talker;

  GreetingStage(Exam exam) {
    this.exam = exam;
    this.talker = exam.talker();
  }

  /**
   * Greets. Whether it answers; if not, it was heard out.
   *
   * @throws LinkFailure if nobody speaks there
   */
  boolean run(String port) throws LineGone {
    talker.listen(SETTLES_NS);
    talker.write(OPENING);
    if (!answers()) {
      hearOut(port);
      return false;
    }
    understood(port);
    if (!exam.idle() && exam.can(Ability.START_STOP)) {
      talker.ask(new Stop());
    }
    talker.listen(SETTLES_NS);
    exam.witness().forget();
    described(talker.ask(HELLO));
    return true;
  }

  /** A host does not decode a higher version than its own (SPEC §3). */
  private void understood(String port) {
    if (exam.witness().identity() == null) {
      throw new LinkFailure(port, "the logger answers and does not say who it is");
    }
    Identity identity = exam.identity();
    if (identity.major() != HELLO.major()) {
      throw new LinkFailure(
          port,
          "the logger speaks version %d.%d of the link, this program version %d.%d"
              .formatted(identity.major(), identity.minor(), HELLO.major(), HELLO.minor()));
    }
  }

  private boolean answers() throws LineGone {
    for (Encoding encoding : Encoding.values()) {
      talker.speak(encoding);
      int sequence = talker.take();
      if (talker.say(talker.encoded(HELLO, sequence), MessageType.HELLO, sequence).answer()
          != null) {
        return true;
      }
    }
    return false;
  }

  private void described(Reply reply) {
    List<String> order = new ArrayList<>();
    List<String> expected = new ArrayList<>(List.of("identity"));
    Identity identity = exam.identity();
    for (int i = 0; i < identity.positions(); i++) {
      expected.add("position " + i);
    }
    for (int i = 0; i < identity.contacts(); i++) {
      expected.add("contact " + i);
    }
    expected.add("status");
    for (Heard heard : reply.before()) {
      named(heard.message(), order);
    }
    exam.ledger()
        .judge(
            Duty.HELLO,
            reply.is(Result.DONE) && reply.value() == 0 && order.equals(expected),
            "hello brought %s, then %s %d; expected %s, then done 0"
                .formatted(brief(order), reply.word(), reply.value(), brief(expected)));
  }

  private static String brief(List<String> names) {
    int most = 12;
    String shown = String.join(", ", names.subList(0, Math.min(most, names.size())));
    return names.isEmpty()
        ? "nothing"
        : names.size() > most ? shown + " and " + (names.size() - most) + " more" : shown;
  }

  /** Of a logger that samples, other things stand between. */
  private static void named(LinkMessage message, List<String> names) {
    if (message instanceof Identity) {
      names.add("identity");
    } else if (message instanceof ChannelDescription channel) {
      if (channel.kind() == ChannelKind.POSITION) {
        names.add("position " + channel.number());
      } else if (channel.kind() == ChannelKind.CONTACT) {
        names.add("contact " + channel.number());
      }
    } else if (message instanceof Status status && status.state() != LoggerState.RUNNING) {
      names.add("status");
    } else if (message instanceof Status && !names.contains("status")) {
      names.add("status");
    } else if (message instanceof Answer) {
      names.add("answer");
    }
  }

  private void hearOut(String port) throws LineGone {
    exam.witness().forget();
    long startNs = talker.nowNs();
    talker.listen(REPEATS_NS);
    if (exam.mark() == 0) {
      long bytes = exam.witness().bytes();
      throw new LinkFailure(
          port,
          bytes == 0
              ? "no logger answers on this port, not a byte came"
              : "of the %d bytes that came none make a message (is the baud rate right?)"
                  .formatted(bytes));
    }
    repeats(startNs);
    boolean samples = exam.since(0).stream().anyMatch(h -> h.message() instanceof SampleBlock);
    exam.ledger()
        .judge(
            Duty.REPEATS,
            samples,
            "not one sample in %.0f s, and it cannot be told to start"
                .formatted((talker.nowNs() - startNs) * 1e-9));
  }

  /** Whether it says often enough who it is, and what each of its channels. */
  private void repeats(long startNs) {
    Map<String, Long> last = new TreeMap<>(Map.of("identity", startNs));
    Identity identity = exam.witness().identity();
    for (int i = 0; identity != null && i < identity.positions(); i++) {
      last.put("position " + i, startNs);
    }
    for (int i = 0; identity != null && i < identity.contacts(); i++) {
      last.put("contact " + i, startNs);
    }
    long longest = 0;
    String what = "identity";
    List<Heard> all = exam.since(0);
    for (int i = 0; i <= all.size(); i++) {
      List<String> names = new ArrayList<>();
      long nowNs = i < all.size() ? all.get(i).arrivalNs() : talker.nowNs();
      if (i < all.size()) {
        named(all.get(i).message(), names);
      } else {
        names.addAll(last.keySet());
      }
      for (String name : names) {
        Long before = last.replace(name, nowNs);
        if (before != null && nowNs - before > longest) {
          longest = nowNs - before;
          what = name;
        }
      }
    }
    exam.ledger()
        .judge(
            Duty.REPEATS,
            longest <= 10_000_000_000L + Talker.GRACE_NS,
            "%.1f s without %s, and it answers nothing".formatted(longest * 1e-9, what));
  }
}
