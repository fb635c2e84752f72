package tripline.reduce;

import tripline.sample.ContactState;
import tripline.sample.Mark;

/** Something that happened at an instant whose position is wanted. */
sealed interface Happening {
  /** The instant on the contacts' clock, ns: the middle of the bracket where there is one. */
  long atNs();

  /** Position stamp minus the stamp of this, ns. */
  long skewNs(ReductionSettings settings);

  /**
   * A contact changed and held its new state.
   *
   * @param beforeNs last time the old state was still certain, ns
   * @param afterNs first edge, ns
   * @param lastEdgeNs last edge of the burst, ns
   * @param bounces edges after the first
   */
  record Settled(
      int channel, ContactState to, long beforeNs, long afterNs, long lastEdgeNs, int bounces)
      implements Happening {
    @Override
    public long atNs() {
      return beforeNs + (afterNs - beforeNs) / 2;
    }

    @Override
    public long skewNs(ReductionSettings settings) {
      return settings.skewNs(channel);
    }
  }

  /**
   * A burst ended in the state it began in.
   *
   * @param beforeNs last time the state was still certain, ns
   * @param fromNs first edge, ns
   * @param toNs last edge, ns
   * @param edges how many
   */
  record Disturbed(int channel, long beforeNs, long fromNs, long toNs, int edges)
      implements Happening {
    @Override
    public long atNs() {
      return beforeNs + (fromNs - beforeNs) / 2;
    }

    @Override
    public long skewNs(ReductionSettings settings) {
      return settings.skewNs(channel);
    }
  }

  /** The operator pressed a mark. */
  record Marked(long atNs, Mark mark, String text) implements Happening {
    @Override
    public long skewNs(ReductionSettings settings) {
      return settings.skewNs();
    }
  }
}
