package tripline.harness.conform;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.zip.CRC32C;
import tripline.harness.serial.LineGone;
import tripline.link.Ability;
import tripline.link.Fetch;
import tripline.link.LinkMessage;
import tripline.link.ListStored;
import tripline.link.Piece;
import tripline.link.Result;
import tripline.link.Status;
import tripline.link.Stop;
import tripline.link.Stored;

/**
 * Stored recordings: the list, the bytes, parts of them, and an end in the middle (SPEC §5, §6).
 */
final class StoredStage {
  /** Longer ones take minutes on a line of 115 200 baud. */
  private static final long MOST_BYTES = 2_000_000;

  private static final int PART = 100;
  private static final long QUIET_NS = 5_000_000_000L;
  private static final long SILENCE_NS = 400_000_000L;

  private final Exam exam;
  private final Talker talker;

  StoredStage(Exam exam) {
    this.exam = exam;
    this.talker = exam.talker();
  }

  void run() throws LineGone {
    if (!exam.can(Ability.STORED)) {
      exam.ledger().notTried(Duty.STORED, "it has no stored recordings");
      exam.ledger().notTried(Duty.STREAM, "it has no stored recordings");
      return;
    }
    List<Stored> list = list();
    refused(new Fetch(unknown(list), 0, 0), "fetch of an id that is not in the list");
    Stored least =
        list.stream()
            .filter(s -> s.bytes() > 0 && s.bytes() <= MOST_BYTES)
            .min(Comparator.comparingLong(Stored::bytes))
            .orElse(null);
    if (least == null) {
      String why = "no stored recording of at most 2 MB: make a short one";
      exam.ledger().notSeen(Duty.STORED, why);
      exam.ledger().notSeen(Duty.STREAM, why);
      return;
    }
    refused(new Fetch(least.id(), least.bytes(), 0), "fetch from the end of a recording on");
    byte[] whole = fetch(least.id(), 0, 0, least.bytes());
    CRC32C crc = new CRC32C();
    crc.update(whole);
    kept(
        crc.getValue() == least.check() && whole.length == least.bytes(),
        "recording %d: %d bytes of check %08x, listed as %d of check %08x"
            .formatted(least.id(), whole.length, crc.getValue(), least.bytes(), least.check()));
    parts(least, whole);
    StoredStream.judge(exam, least, whole);
    ended(list.stream().max(Comparator.comparingLong(Stored::bytes)).orElse(least));
  }

  private void kept(boolean kept, String what) {
    exam.ledger().judge(Duty.STORED, kept, what);
  }

  private List<Stored> list() throws LineGone {
    int from = exam.mark();
    Reply reply = talker.ask(new ListStored());
    talker.listen(SILENCE_NS + talker.lineNs((int) Math.min(60_000, 100 * reply.value())));
    List<Stored> list = of(exam.since(from), Stored.class);
    boolean right = reply.is(Result.DONE) && list.size() == reply.value();
    for (int i = 0; i < list.size(); i++) {
      right &= list.get(i).index() == i && list.get(i).count() == list.size();
    }
    kept(
        right,
        "list: %s %d, then %d entries, indexes %s"
            .formatted(
                reply.word(),
                reply.value(),
                list.size(),
                list.stream().map(Stored::index).limit(10).toList()));
    if (!list.isEmpty()) {
      int again = exam.mark();
      int sequence = talker.take();
      talker.ask(new ListStored(), sequence);
      talker.ask(new ListStored(), sequence);
      talker.listen(SILENCE_NS);
      int entries = of(exam.since(again), Stored.class).size();
      exam.ledger()
          .judge(
              Duty.RETRY,
              entries == 2 * list.size(),
              "list said twice brought %d entries, expected %d"
                  .formatted(entries, 2 * list.size()));
    }
    boolean early = !reply.before(Stored.class).isEmpty();
    exam.ledger().judge(Duty.PLACES, !early, "entries of the list before the answer to list");
    return list;
  }

  private static long unknown(List<Stored> list) {
    long id = 0x00c0ffee;
    while (anyHas(list, id)) {
      id++;
    }
    return id;
  }

  private static boolean anyHas(List<Stored> list, long id) {
    return list.stream().anyMatch(s -> s.id() == id);
  }

  private void refused(Fetch fetch, String what) throws LineGone {
    Reply reply = talker.ask(fetch);
    exam.ledger()
        .judge(
            Duty.REFUSALS,
            reply.is(Result.BAD_VALUE),
            "%s: %s, expected bad-value".formatted(what, reply.word()));
  }

  /** Fetches bytes; what came, whether all of it or not. */
  private byte[] fetch(long id, long offset, long length, long expected) throws LineGone {
    int from = exam.mark();
    Reply reply = talker.ask(new Fetch(id, offset, length));
    kept(
        reply.is(Result.DONE) && reply.value() == expected,
        "fetch %d from %d: %s %d, expected done %d"
            .formatted(id, offset, reply.word(), reply.value(), expected));
    exam.ledger()
        .judge(
            Duty.PLACES, reply.before(Piece.class).isEmpty(), "pieces before the answer to fetch");
    return pieces(from, id, offset, expected);
  }

  private byte[] pieces(int from, long id, long offset, long expected) throws LineGone {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    int looked = from;
    long lastNs = talker.nowNs();
    boolean ended = false;
    while (!ended && talker.nowNs() - lastNs < QUIET_NS) {
      talker.pump();
      for (; looked < exam.mark(); looked++) {
        LinkMessage message = exam.witness().heard().get(looked).message();
        if (message instanceof Piece piece) {
          kept(
              piece.id() == id && piece.offset() == offset + bytes.size(),
              "piece of %d at %d, expected %d at %d"
                  .formatted(piece.id(), piece.offset(), id, offset + bytes.size()));
          bytes.writeBytes(piece.data());
          lastNs = talker.nowNs();
        }
        ended |= message instanceof Status && bytes.size() >= expected;
      }
    }
    kept(ended, "no status after the last of %d bytes fetched".formatted(bytes.size()));
    return bytes.toByteArray();
  }

  private void parts(Stored stored, byte[] whole) throws LineGone {
    int third = whole.length / 3;
    int length = Math.min(PART, whole.length - third);
    byte[] part = fetch(stored.id(), third, length, length);
    kept(
        Arrays.equals(part, Arrays.copyOfRange(whole, third, third + length)),
        "bytes from %d on differ from those fetched before".formatted(third));
    int tail = Math.min(10, whole.length);
    byte[] cut = fetch(stored.id(), whole.length - tail, 1000, tail);
    kept(
        Arrays.equals(cut, Arrays.copyOfRange(whole, whole.length - tail, whole.length)),
        "the last bytes differ from those fetched before");
  }

  /** Stop ends a fetch: one status, then the answer, then no more pieces. */
  private void ended(Stored stored) throws LineGone {
    int from = exam.mark();
    Reply fetch = talker.ask(new Fetch(stored.id(), 0, 0));
    Reply stop = talker.ask(new Stop());
    talker.listen(SILENCE_NS);
    List<Heard> after = exam.witness().heard().subList(stop.after(), exam.mark());
    boolean all =
        of(exam.since(from), Piece.class).stream().mapToLong(p -> p.data().length).sum()
            >= stored.bytes();
    int statuses =
        of(exam.witness().heard().subList(fetch.after(), exam.mark()), Status.class).size();
    exam.ledger()
        .judge(
            Duty.STORED,
            fetch.is(Result.DONE)
                && stop.is(Result.DONE)
                && of(after, Piece.class).isEmpty()
                && (all || statuses == 1),
            "stop during a fetch: %s, %d status, %d pieces after it"
                .formatted(stop.word(), statuses, of(after, Piece.class).size()));
  }

  private static <M extends LinkMessage> List<M> of(List<Heard> heard, Class<M> kind) {
    return heard.stream().map(Heard::message).filter(kind::isInstance).map(kind::cast).toList();
  }
}
