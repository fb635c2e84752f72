package tripline.link;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.sample.Channels;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/**
 * Makes samples of the messages of a logger: unwraps its clock, applies scale and polarity, puts
 * contacts where the job asks for them, merges edges and marks into the rows by time, and reports
 * what is missing.
 *
 * <p>Input delays are not applied, since rows carry all channels under one stamp (SPEC H7): see
 * {@link #channels}.
 */
public final class LinkSamples implements BodySink {
  private static final long NONE = Long.MIN_VALUE;
  private static final long WRAP = 0xffff_ffffL;
  private static final long AHEAD = 1L << 31;

  private final SinkSource sinks;
  private final ChannelMap channels;
  private final LinkClock clock = new LinkClock();
  private final Waiting waiting = new Waiting();
  private final BlockRows block = new BlockRows();
  private @Nullable SampleSink sink;
  private @Nullable Identity identity;
  private @Nullable Status status;
  private SinkSource.Break pendingBreak = SinkSource.Break.FIRST;
  private long lastNs = NONE;
  private boolean afterLineLost;
  private long nextNumber = NONE;
  private long nextEdge = NONE;
  private long rows;
  private long unplacedRows;
  private long lostOnLink;
  private long lostInLogger;
  private long lostEdges;

  /**
   * @param asked contacts of the job; the logger's others are left out
   * @param sinks asked for a sink when the first row, and after each break
   */
  public LinkSamples(Channels asked, SinkSource sinks) {
    this.channels = new ChannelMap(asked);
    this.sinks = sinks;
  }

  @Override
  public void onBody(MessageType type, byte[] body, int length) {
    switch (type) {
      case IDENTITY -> onIdentity(Identity.read(body));
      case CHANNEL -> channels.describe(ChannelDescription.read(body));
      case STATUS -> onStatus(Status.read(body));
      case SAMPLES -> onSamples(body);
      case EDGES -> onEdges(body);
      case MARK -> onMark(MarkMessage.read(body));
      case LOSS -> onLoss(LossMessage.read(body));
      default -> {}
    }
  }

  /**
   * The line was lost and is to come back: rows that follow in the same session come after a gap,
   * even where their numbers begin again.
   */
  public void lineLost() {
    afterLineLost = true;
  }

  /**
   * What follows is received at this time of the host's clock: it tells how often a narrow clock of
   * the logger has wrapped while nothing came.
   *
   * @param elapsedMicros of a clock that never steps, microseconds
   */
  public void hostTime(long elapsedMicros) {
    clock.host(elapsedMicros);
  }

  /**
   * Two clocks of the host differ by so much about how long nothing came: where that may cost a
   * wrap of the logger's clock, another stretch begins.
   */
  public void hostTimeDoubtful(long byMicros) {
    Identity present = identity;
    if (present != null && clock.isLostBy(byMicros)) {
      finish();
      clock.restart(present.clockBits());
      pendingBreak = sink == null ? pendingBreak : SinkSource.Break.TIME_UNKNOWN;
      sink = null;
      lastNs = NONE;
    }
  }

  /**
   * A mark that the logger does not know of: it belongs after the row handed on last.
   *
   * @param text free text; counts for notes only
   * @return false, and nothing is done, if no row was handed on in this stretch
   */
  public boolean markHere(Mark mark, String text) {
    SampleSink into = sink;
    if (into == null || lastNs == NONE) {
      return false;
    }
    into.onMark(lastNs, mark, markText(mark, text));
    return true;
  }

  /** The kind of a mark in the words of recordings; of a note its text, where it has one. */
  private static String markText(Mark mark, String text) {
    return switch (mark) {
      case CLOSED_STOP -> MarkKind.CLOSED_STOP.word();
      case OPEN_STOP -> MarkKind.OPEN_STOP.word();
      case ADJUSTED -> MarkKind.ADJUSTED.word();
      case NOTE -> text.isEmpty() ? MarkKind.NOTE.word() : text;
    };
  }

  /** Hands on the edges and marks that still wait. */
  public void finish() {
    while (!waiting.empty()) {
      sendFirst();
    }
  }

  /**
   * Hands the edges and marks that still wait to another sink, as {@link #finish} would hand them
   * to the present one, and keeps them: what a recording that goes on would hold if it ended now.
   */
  public void copyWaiting(SampleSink into) {
    waiting.copyTo(into, sink == null ? NONE : lastNs);
  }

  /**
   * Why the stretch begins that the waiting edges and marks would be the first of, if the stream
   * ended now; empty where they belong to the present one, or none wait.
   */
  public Optional<SinkSource.Break> stretchToBegin() {
    return sink == null && !waiting.empty() ? Optional.of(pendingBreak) : Optional.empty();
  }

  /** The logger, as it last said. */
  public @Nullable Identity identity() {
    return identity;
  }

  /** Its last status. */
  public @Nullable Status status() {
    return status;
  }

  /** Its channels as described so far, position first. */
  public List<ChannelDescription> channels() {
    return channels.channels();
  }

  /** Rows handed on. */
  public long rows() {
    return rows;
  }

  /** Rows that came before identity and channels (SPEC H9). */
  public long unplacedRows() {
    return unplacedRows;
  }

  /** Samples that the link lost. */
  public long lostOnLink() {
    return lostOnLink;
  }

  /** Samples that the logger says it lost. */
  public long lostInLogger() {
    return lostInLogger;
  }

  /** Edges lost, wherever. */
  public long lostEdges() {
    return lostEdges;
  }

  /** Edges and marks that came after later rows, against SPEC L10. */
  public long lateEvents() {
    return waiting.late();
  }

  private void onIdentity(Identity said) {
    Identity before = identity;
    if (before == null || before.session() != said.session()) {
      finish();
      clock.restart(said.clockBits());
      nextNumber = NONE;
      nextEdge = NONE;
      pendingBreak = sink == null ? SinkSource.Break.FIRST : SinkSource.Break.NEW_SESSION;
      sink = null;
    }
    if (!said.equals(before)) {
      channels.expect(said);
    }
    identity = said;
  }

  private void onStatus(Status said) {
    status = said;
    if (said.state() == LoggerState.IDLE) {
      finish();
    }
  }

  private boolean placed() {
    return identity != null && channels.complete();
  }

  private void onSamples(byte[] body) {
    int count = Le.u16(body, SamplesLayout.COUNT);
    if (!placed()) {
      unplacedRows += count;
      return;
    }
    long firstNs = clock.timeNs(Le.i64(body, SamplesLayout.STAMP));
    SampleSink into = sinkFor(firstNs);
    follow(into, Le.u32(body, SamplesLayout.NUMBER), firstNs);
    nextNumber = (nextNumber + count) & WRAP;
    sendRows(into, body, firstNs);
    rows += count;
  }

  /** The sink for rows from this time on: another if the clock stepped back. */
  private SampleSink sinkFor(long timeNs) {
    SampleSink present = sink;
    if (present != null && lastNs != NONE && timeNs < lastNs) {
      finish();
      pendingBreak = SinkSource.Break.STEP_BACK;
      present = null;
    }
    if (present == null) {
      present = sinks.next(pendingBreak);
      sink = present;
      lastNs = NONE;
    }
    return present;
  }

  /** Reports the samples between the last row and this one that nobody announced. */
  private void follow(SampleSink into, long number, long firstNs) {
    if (nextNumber != NONE) {
      long ahead = (number - nextNumber) & WRAP;
      boolean startedAnew = ahead >= AHEAD;
      long missing = startedAnew ? number : ahead;
      lostOnLink += missing;
      if (startedAnew && afterLineLost && lastNs != NONE) {
        into.onLoss(lastNs, firstNs, -1);
      } else if (missing > 0) {
        into.onLoss(lastNs == NONE ? firstNs : lastNs, firstNs, missing);
      }
    }
    afterLineLost = false;
    nextNumber = number;
  }

  private void sendRows(SampleSink into, byte[] body, long firstNs) {
    block.read(body, firstNs, channels.position());
    long known = channels.place(Le.i64(body, SamplesLayout.KNOWN));
    int row = 0;
    while (row < block.size()) {
      while (!waiting.empty() && waiting.firstNs() <= block.timeNs(row)) {
        sendFirst();
      }
      int end = block.endOfLike(row, waiting.empty() ? Long.MAX_VALUE : waiting.firstNs());
      block.send(into, row, end, known, channels.closed(block.levels(row)) & known);
      lastNs = block.timeNs(end - 1);
      row = end;
    }
  }

  private void onEdges(byte[] body) {
    if (!placed()) {
      return;
    }
    long number = Le.u32(body, EdgesLayout.NUMBER);
    int count = Le.u8(body, EdgesLayout.COUNT);
    long timeNs =
        clock.timeNs(Le.i64(body, EdgesLayout.STAMP)) + Le.u16(body, EdgesLayout.FRACTION);
    long ahead = nextEdge == NONE ? 0 : (number - nextEdge) & WRAP;
    if (ahead > 0 && ahead < AHEAD) {
      edgesLost(ahead, lastNs == NONE ? timeNs : Math.min(lastNs, timeNs), timeNs);
    }
    nextEdge = (number + count) & WRAP;
    for (int i = 0; i < count; i++) {
      int at = EdgesLayout.EDGES + i * EdgesLayout.EDGE_SIZE;
      timeNs += Le.u32(body, at);
      int last = Le.u8(body, at + EdgesLayout.EDGE_CONTACT);
      int contact = last & EdgesLayout.CONTACT_BITS;
      ChannelDescription channel = channels.contact(contact);
      int bit = channels.bitOf(contact);
      if (channel != null && bit >= 0) {
        room();
        ContactState state =
            last >> 7 == channel.closedLevel() ? ContactState.CLOSED : ContactState.OPEN;
        waiting.edge(timeNs, channel.resolutionNs(), bit, state);
      }
    }
  }

  private void edgesLost(long count, long fromNs, long toNs) {
    lostEdges += count;
    if (sink != null) {
      sink.onLoss(fromNs, toNs, -1);
    }
  }

  private void onMark(MarkMessage said) {
    if (placed()) {
      room();
      Mark mark =
          switch (said.kind()) {
            case CLOSED_STOP -> Mark.CLOSED_STOP;
            case OPEN_STOP -> Mark.OPEN_STOP;
            case ADJUSTED -> Mark.ADJUSTED;
            case NOTE -> Mark.NOTE;
          };
      waiting.mark(clock.timeNs(said.stampMicros()), mark, markText(mark, said.text()));
    }
  }

  private void onLoss(LossMessage said) {
    if (!placed()) {
      return;
    }
    long fromNs = clock.timeNs(said.stampMicros());
    long untilNs = clock.timeNs(said.untilMicros());
    if (said.what() == LossWhat.EDGES) {
      nextEdge = (said.number() + said.count()) & WRAP;
      edgesLost(said.count(), fromNs, untilNs);
    } else if (said.what() == LossWhat.SAMPLES) {
      SampleSink into = sinkFor(Math.max(fromNs, lastNs));
      follow(into, said.number(), fromNs);
      nextNumber = (said.number() + said.count()) & WRAP;
      lostInLogger += said.count();
      into.onLoss(lastNs == NONE ? fromNs : Math.min(lastNs, fromNs), untilNs, said.count());
    }
  }

  private void room() {
    if (waiting.full()) {
      sendFirst();
    }
  }

  private void sendFirst() {
    SampleSink into = sink == null ? sinkFor(waiting.firstNs()) : sink;
    lastNs = waiting.sendFirst(into, lastNs);
  }
}
