package tripline.harness.capture;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import tripline.link.Answer;
import tripline.link.BodySink;
import tripline.link.ChannelDescription;
import tripline.link.Encoding;
import tripline.link.Hello;
import tripline.link.Identity;
import tripline.link.LinkDecoder;
import tripline.link.LinkEncoder;
import tripline.link.LinkMessage;
import tripline.link.MarkMessage;
import tripline.link.MessageType;
import tripline.link.Place;
import tripline.link.Reports;
import tripline.link.Result;
import tripline.link.SampleBlock;
import tripline.link.Start;
import tripline.link.Status;
import tripline.link.Stop;

/**
 * A logger that does as the specification says, of whose samples every one can be told: sample
 * {@code n} since start has the count {@link #count} and the levels {@link #levels}. It speaks over
 * nothing: bytes in, bytes out, time told.
 */
final class SimLogger {
  static final int CONTACTS = 4;
  static final int ALL = 0x5f;
  private static final int STATUS_MICROS = 500_000;

  final List<String> heard = new ArrayList<>();
  String serial = "0001";
  int abilities = ALL;
  Result startResult = Result.DONE;
  Result placeResult = Result.DONE;
  Reports reports = Reports.SAMPLED;
  boolean running;
  boolean deaf;
  boolean dry;
  int rowsABlock = 20;
  private final long periodMicros;
  private LinkEncoder encoder = new LinkEncoder();
  private LinkDecoder ear = new LinkDecoder(this::onCommand);
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final byte[] buffer = new byte[LinkEncoder.MOST_BYTES];
  private final SampleBlock block = new SampleBlock();
  private long session = 7;
  private long nowMicros;
  private long powerMicros;
  private long startMicros;
  private long number;
  private long nextStatusMicros;
  private int marks;

  SimLogger(long periodMicros) {
    this.periodMicros = periodMicros;
  }

  static int count(long number) {
    long phase = number % 62_000;
    return (int) (phase < 31_000 ? phase : 62_000 - phase);
  }

  static long levels(long number) {
    int count = count(number);
    return (count >= 500 ? 1 : 2) | (count >= 7_750 ? 4 : 0) | (count < 30_500 ? 8 : 0);
  }

  /** Samples since the last start. */
  long number() {
    return number;
  }

  void hear(byte[] bytes, int length) {
    if (!deaf) {
      ear.accept(bytes, 0, length);
    }
  }

  /** What it has to say, taken away. */
  byte[] take() {
    byte[] said = out.toByteArray();
    out.reset();
    return said;
  }

  boolean hasSomethingToSay() {
    return out.size() > 0;
  }

  /** Switched off and on. */
  void powerCycle() {
    session++;
    encoder = new LinkEncoder();
    ear = new LinkDecoder(this::onCommand);
    running = false;
    powerMicros = nowMicros;
    number = 0;
    out.reset();
    out.write(0);
    describe();
    status();
  }

  /** Time passes; what was sampled up to then is said. */
  void passTo(long micros) {
    nowMicros = micros;
    while (running && !dry && startMicros + (number + rowsABlock) * periodMicros <= nowMicros) {
      sayBlock();
    }
    if (running && nowMicros >= nextStatusMicros) {
      nextStatusMicros = nowMicros + STATUS_MICROS;
      status();
    }
  }

  private void sayBlock() {
    long stamp = startMicros + number * periodMicros - powerMicros;
    block.begin(number, stamp, periodMicros * 1000, (1 << CONTACTS) - 1);
    for (int i = 0; i < rowsABlock && block.add(count(number), levels(number), 0); i++) {
      number++;
    }
    say(block);
  }

  private void say(LinkMessage message) {
    out.write(buffer, 0, encoder.encode(message, Encoding.FRAMES, buffer, 0));
  }

  private void describe() {
    say(identity());
    say(ChannelDescription.position("position", "turn", 1, 1000, 0, 0));
    for (int i = 0; i < CONTACTS; i++) {
      say(ChannelDescription.contact(i, "k" + (i + 1), 1, reports, 0, 0));
    }
  }

  private Identity identity() {
    return new Identity(
        1, 0, 53, CONTACTS, 1, 1, 512, abilities, session, 1, 1_000_000_000, "Sim", serial, "1");
  }

  private void status() {
    say(
        new Status(
            running ? 1 : 0,
            0,
            0,
            nowMicros - powerMicros,
            0,
            session,
            running ? 1_000_000_000L / periodMicros : 0,
            number,
            0,
            0,
            0,
            0));
  }

  private void onCommand(MessageType type, byte[] body, int length) {
    int sequence = BodySink.sequence(body);
    LinkMessage command = LinkMessage.read(type, body);
    heard.add(type.word());
    Result result = Result.DONE;
    long value = 0;
    if (command instanceof Hello) {
      describe();
      status();
    } else if (command instanceof Start) {
      result = running ? Result.NOT_NOW : startResult;
      value = 1_000_000_000L / periodMicros;
    } else if (command instanceof Stop) {
      running = false;
      status();
    } else if (command instanceof Place place) {
      result = placeResult;
      value = marks;
      if (result == Result.DONE) {
        say(new MarkMessage(place.kindCode(), 2, marks++, nowMicros - powerMicros, place.text()));
      }
    }
    say(new Answer(type.code(), result.code(), sequence, value));
    if (command instanceof Start && result == Result.DONE) {
      running = true;
      startMicros = nowMicros;
      number = 0;
      marks = 0;
    }
  }

  /** The operator presses its button. */
  void press(int kindCode) {
    say(new MarkMessage(kindCode, 1, marks++, nowMicros - powerMicros, ""));
  }
}
