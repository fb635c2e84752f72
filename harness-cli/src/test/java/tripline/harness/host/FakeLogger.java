package tripline.harness.host;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongSupplier;
import tripline.harness.serial.ByteLine;
import tripline.harness.serial.LineGone;
import tripline.link.Answer;
import tripline.link.BodySink;
import tripline.link.ChannelDescription;
import tripline.link.Encoding;
import tripline.link.Hello;
import tripline.link.Identity;
import tripline.link.LinkDecoder;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;
import tripline.link.MessageType;
import tripline.link.Reports;
import tripline.link.Result;
import tripline.link.Status;
import tripline.link.Talk;

/**
 * A logger as a line, by a clock of its own that a read without bytes moves on. What it does with
 * each command is a list of habits, tried in order.
 */
final class FakeLogger implements ByteLine, LongSupplier {
  /** What it does with a command. */
  interface Habit {
    /** Whether this was the habit's business. */
    boolean on(MessageType type, LinkMessage command, int sequence);
  }

  final List<String> heard = new ArrayList<>();
  final List<Habit> habits = new ArrayList<>();
  final LinkEncoder encoder = new LinkEncoder();
  final ByteArrayOutputStream received = new ByteArrayOutputStream();
  Encoding talks = Encoding.FRAMES;
  int encodings = 3;
  int major = 1;
  boolean gone;
  long nowNs;
  private final ByteArrayOutputStream due = new ByteArrayOutputStream();
  private final LinkDecoder decoder = new LinkDecoder(this::onCommand);

  private void onCommand(MessageType type, byte[] body, int length) {
    LinkMessage command = LinkMessage.read(type, body);
    int sequence = BodySink.sequence(body);
    heard.add(type.word() + " " + sequence + " " + decoder.encoding());
    for (Habit habit : habits) {
      if (habit.on(type, command, sequence)) {
        return;
      }
    }
    if (command instanceof Hello hello) {
      turnTo(hello.talk());
      describe();
      status(0);
    }
    say(new Answer(type.code(), Result.DONE.code(), sequence, 0));
  }

  void turnTo(Talk talk) {
    Encoding wanted =
        talk == Talk.FRAMES ? Encoding.FRAMES : talk == Talk.LINES ? Encoding.LINES : talks;
    if (wanted != talks) {
      due.write(0);
    }
    talks = wanted;
  }

  void describe() {
    say(identity());
    say(ChannelDescription.position("p", "turn", 1, 24, 0, 0));
    say(ChannelDescription.contact(0, "k1", 1, Reports.BOTH, 0, 1000));
  }

  Identity identity() {
    return new Identity(
        major, 0, 53, 1, 1, encodings, 512, 0x7f, 77, 1, 1_000_000, "fake", "1", "0");
  }

  void status(int state) {
    say(new Status(state, 0, 0, nowNs / 1000, 0, 77, 0, 0, 0, 0, 0, 0));
  }

  void say(LinkMessage message) {
    byte[] out = new byte[LinkEncoder.MOST_BYTES];
    due.write(out, 0, encoder.encode(message, talks, out, 0));
  }

  void raw(byte... bytes) {
    due.writeBytes(bytes);
  }

  @Override
  public String name() {
    return "fake";
  }

  @Override
  public int read(byte[] into) throws LineGone {
    if (gone) {
      throw new LineGone("fake", "unplugged");
    }
    byte[] all = due.toByteArray();
    int length = Math.min(all.length, into.length);
    if (length == 0) {
      nowNs += READ_WAIT_MS * 1_000_000L;
      return 0;
    }
    nowNs += 1_000_000;
    System.arraycopy(all, 0, into, 0, length);
    due.reset();
    due.write(all, length, all.length - length);
    return length;
  }

  @Override
  public void write(byte[] bytes, int length) {
    received.write(bytes, 0, length);
    decoder.accept(bytes, 0, length);
  }

  @Override
  public void close() {
    gone = true;
  }

  @Override
  public long getAsLong() {
    return nowNs;
  }
}
