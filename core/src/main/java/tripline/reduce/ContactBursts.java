package tripline.reduce;

import tripline.sample.Channels;
import tripline.sample.ContactState;

/**
 * Follows the contacts' states and tells settled changes from disturbances. A burst begins with the
 * first edge away from the settled state and ends when a state has held for the settling time.
 *
 * <p>Rows that repeat the states of the row before cost a mask comparison. A channel that is hardly
 * ever read twice with the same state belongs to a logger that writes changes only: its state holds
 * until just before the next row.
 */
final class ContactBursts {
  /** Takes what the bursts turn out to be: settled changes and disturbances. */
  interface Sink {
    void onHappening(Happening happening);
  }

  private static final int MOST = Channels.MOST_CONTACTS;

  private final long settleNs;
  private final Rhythm rows;
  private final Sink sink;

  private long everKnown;
  private long startClosed;
  private long raw;
  private long settled;
  private long bursting;

  /** Channels whose edges the logger stamps itself. */
  private long stamped;

  private long groupKnown;
  private long groupRows;
  private long groupLastNs;
  private long closedRows;
  private long allEdges;
  private long previousRowNs;

  private final long[] lastReadNs = new long[MOST];
  private final long[] reads = new long[MOST];
  private final long[] edgesSeen = new long[MOST];
  private final long[] beforeNs = new long[MOST];
  private final long[] afterNs = new long[MOST];
  private final long[] lastEdgeNs = new long[MOST];
  private final int[] burstEdges = new int[MOST];

  ContactBursts(long settleNs, Rhythm rows, Sink sink) {
    this.settleNs = settleNs;
    this.rows = rows;
    this.sink = sink;
  }

  /**
   * A row of the logger. Hot: where nothing changes, a few mask operations.
   *
   * @param stampBeforeNs time of the last row with an earlier stamp (of this one, if it is the
   *     first)
   */
  void onRow(long timeNs, long stampBeforeNs, long known, long closed) {
    long edges = (closed ^ raw) & known & everKnown;
    long fresh = known & ~everKnown;
    if (known != groupKnown && known != 0) {
      closeGroup(known);
    }
    if ((edges | fresh | bursting) != 0) {
      previousRowNs = stampBeforeNs;
      onUnquietRow(timeNs, known, edges, fresh, closed);
    }
    if (known != 0) {
      groupRows++;
      groupLastNs = timeNs;
    }
  }

  /** Whether a row of these states, all seen before and none in a burst, changes nothing. */
  boolean isQuiet(long known, long closed) {
    return known == groupKnown
        && (known & ~everKnown) == 0
        && ((closed ^ raw) & known) == 0
        && bursting == 0;
  }

  /** So many quiet rows, the last of them at a time. */
  void onQuietRows(int rowsTaken, long lastNs) {
    if (groupKnown != 0) {
      groupRows += rowsTaken;
      groupLastNs = lastNs;
    }
  }

  private void onUnquietRow(long timeNs, long known, long edges, long fresh, long closed) {
    for (long m = bursting; m != 0; m &= m - 1) {
      int channel = Long.numberOfTrailingZeros(m);
      if ((edges >>> channel & 1) != 0) {
        endIfHeld(channel, bracketBegin(channel, timeNs));
      } else if ((known >>> channel & 1) != 0) {
        endIfHeld(channel, timeNs);
      } else {
        endIfHeld(channel, heldUnread(channel, timeNs));
      }
    }
    for (long m = fresh; m != 0; m &= m - 1) {
      see(Long.numberOfTrailingZeros(m), closed);
    }
    for (long m = edges; m != 0; m &= m - 1) {
      int channel = Long.numberOfTrailingZeros(m);
      edge(channel, bracketBegin(channel, timeNs), timeNs);
    }
  }

  /**
   * A stamped edge: the logger saw it itself, within {@code resolutionNs} before {@code timeNs}.
   */
  void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    long bit = 1L << channel;
    stamped |= bit;
    long closed = state == ContactState.CLOSED ? bit : 0;
    if ((everKnown & bit) == 0) {
      // The first news of a channel is an edge: it was in the other state until now.
      see(channel, closed ^ bit);
    }
    boolean news = ((raw ^ closed) & bit) != 0;
    settleUnread(timeNs, news ? bursting & ~bit : bursting);
    if (news) {
      if ((bursting & bit) != 0) {
        endIfHeld(channel, timeNs - resolutionNs);
      }
      edge(channel, timeNs - resolutionNs, timeNs);
    }
  }

  /** Time passes with no reading of a contact. */
  void onTime(long timeNs) {
    settleUnread(timeNs, bursting);
  }

  private void settleUnread(long timeNs, long channels) {
    for (long m = channels; m != 0; m &= m - 1) {
      int channel = Long.numberOfTrailingZeros(m);
      endIfHeld(channel, heldUnread(channel, timeNs));
    }
  }

  /**
   * How long a channel's state is certain where nothing is read of it: silence means that it holds
   * where edges are stamped or only changes are written, and nothing where it is sampled slowly.
   */
  private long heldUnread(int channel, long timeNs) {
    boolean silenceHolds = (stamped >>> channel & 1) != 0 || writesChangesOnly(channel);
    return silenceHolds ? timeNs : lastRead(channel);
  }

  private void see(int channel, long closed) {
    long bit = 1L << channel;
    everKnown |= bit;
    raw = (raw & ~bit) | (closed & bit);
    settled = (settled & ~bit) | (closed & bit);
    startClosed |= closed & bit;
  }

  private void edge(int channel, long before, long timeNs) {
    long bit = 1L << channel;
    raw ^= bit;
    edgesSeen[channel]++;
    allEdges++;
    if ((bursting & bit) == 0) {
      bursting |= bit;
      beforeNs[channel] = before;
      afterNs[channel] = timeNs;
      burstEdges[channel] = 0;
    }
    burstEdges[channel]++;
    lastEdgeNs[channel] = timeNs;
  }

  private void endIfHeld(int channel, long heldUntilNs) {
    if (heldUntilNs - lastEdgeNs[channel] >= settleNs) {
      endBurst(channel);
    }
  }

  private void endBurst(int channel) {
    long bit = 1L << channel;
    bursting &= ~bit;
    if (((raw ^ settled) & bit) != 0) {
      settled ^= bit;
      sink.onHappening(
          new Happening.Settled(
              channel,
              (settled & bit) != 0 ? ContactState.CLOSED : ContactState.OPEN,
              beforeNs[channel],
              afterNs[channel],
              lastEdgeNs[channel],
              burstEdges[channel] - 1));
    } else {
      sink.onHappening(
          new Happening.Disturbed(
              channel,
              beforeNs[channel],
              afterNs[channel],
              lastEdgeNs[channel],
              burstEdges[channel]));
    }
  }

  /** Last time the state before an edge at {@code timeNs} was still certain. */
  private long bracketBegin(int channel, long timeNs) {
    long read = lastRead(channel);
    if (!writesChangesOnly(channel)) {
      return read;
    }
    long scanNs = rows.scanNs();
    long candidate = Math.max(read, previousRowNs);
    boolean silent = scanNs > 0 && timeNs - candidate > 3 * scanNs;
    return silent ? timeNs - scanNs : candidate;
  }

  private long lastRead(int channel) {
    return ((groupKnown >>> channel) & 1) != 0 && groupRows > 0 ? groupLastNs : lastReadNs[channel];
  }

  private boolean writesChangesOnly(int channel) {
    long read = reads[channel] + (((groupKnown >>> channel) & 1) != 0 ? groupRows : 0);
    long repeats = read - 1 - edgesSeen[channel];
    return repeats <= 2 + edgesSeen[channel];
  }

  /** Rows that read contacts, less the edges: about how often nothing new was read. */
  long repeats() {
    return closedRows + groupRows - allEdges;
  }

  private void closeGroup(long nextKnown) {
    closedRows += groupRows;
    for (long m = groupKnown; m != 0; m &= m - 1) {
      int channel = Long.numberOfTrailingZeros(m);
      lastReadNs[channel] = groupLastNs;
      reads[channel] += groupRows;
    }
    groupKnown = nextKnown;
    groupRows = 0;
  }

  /** States first seen. */
  Trace.States start() {
    return new Trace.States(everKnown, startClosed);
  }

  /** States as settled: those that {@link #start} and the changes since add up to. */
  Trace.States end() {
    return new Trace.States(everKnown, settled);
  }

  /** Stands where another one stands. */
  void become(ContactBursts other) {
    everKnown = other.everKnown;
    startClosed = other.startClosed;
    raw = other.raw;
    settled = other.settled;
    bursting = other.bursting;
    stamped = other.stamped;
    groupKnown = other.groupKnown;
    groupRows = other.groupRows;
    groupLastNs = other.groupLastNs;
    closedRows = other.closedRows;
    allEdges = other.allEdges;
    previousRowNs = other.previousRowNs;
    System.arraycopy(other.lastReadNs, 0, lastReadNs, 0, MOST);
    System.arraycopy(other.reads, 0, reads, 0, MOST);
    System.arraycopy(other.edgesSeen, 0, edgesSeen, 0, MOST);
    System.arraycopy(other.beforeNs, 0, beforeNs, 0, MOST);
    System.arraycopy(other.afterNs, 0, afterNs, 0, MOST);
    System.arraycopy(other.lastEdgeNs, 0, lastEdgeNs, 0, MOST);
    System.arraycopy(other.burstEdges, 0, burstEdges, 0, MOST);
  }
}
