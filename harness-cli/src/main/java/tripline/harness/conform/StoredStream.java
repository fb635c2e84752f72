package tripline.harness.conform;

import java.util.ArrayList;
import java.util.List;
import tripline.link.ChannelDescription;
import tripline.link.Encoding;
import tripline.link.Identity;
import tripline.link.LinkDecoder;
import tripline.link.LinkMessage;
import tripline.link.LossMessage;
import tripline.link.LossWhat;
import tripline.link.SampleBlock;
import tripline.link.Stored;

/** The bytes of a stored recording: frames from the beginning, described, all samples there. */
final class StoredStream {
  private final Exam exam;
  private final Stored stored;
  private final List<LinkMessage> messages = new ArrayList<>();

  private StoredStream(Exam exam, Stored stored) {
    this.exam = exam;
    this.stored = stored;
  }

  static void judge(Exam exam, Stored stored, byte[] whole) {
    StoredStream stream = new StoredStream(exam, stored);
    stream.whole(whole);
    stream.described();
    stream.counted();
  }

  private void whole(byte[] bytes) {
    LinkDecoder decoder =
        new LinkDecoder((type, body, length) -> messages.add(LinkMessage.read(type, body)));
    decoder.accept(bytes, 0, bytes.length);
    decoder.finish();
    boolean clean =
        decoder.counters().damaged() == 0
            && decoder.counters().malformed() == 0
            && decoder.counters().lost() == 0
            && decoder.encoding() == Encoding.FRAMES;
    kept(
        bytes.length > 0 && bytes[0] == 0 && clean,
        "is not a zero byte and whole frames: " + decoder.counters());
  }

  private void described() {
    Identity identity = exam.identity();
    int channels = identity.positions() + identity.contacts();
    kept(
        messages.size() > channels
            && messages.get(0) instanceof Identity
            && messages.subList(1, channels + 1).stream()
                .allMatch(m -> m instanceof ChannelDescription),
        "does not begin with identity and every channel");
  }

  private void counted() {
    long rows = 0;
    for (LinkMessage message : messages) {
      if (message instanceof SampleBlock block) {
        rows += block.rows();
      } else if (message instanceof LossMessage loss && loss.what() == LossWhat.SAMPLES) {
        rows += loss.count();
      }
    }
    kept(
        rows == stored.samples(),
        "has %d samples, and is listed with %d".formatted(rows, stored.samples()));
  }

  private void kept(boolean kept, String what) {
    exam.ledger().judge(Duty.STREAM, kept, "recording %d %s".formatted(stored.id(), what));
  }
}
