package tripline.harness.rehearse.logger;

/** What a logger's terminals are wired to. Times are those of the rig, ns. */
public interface Inputs {
  /** Count of the position sensor at a time within the last step. */
  int countAt(long timeNs);

  /** Closed contacts at a time within the last step, by number. */
  long closedAt(long timeNs);

  /** How many times a contact changed electrically within the last step, in order of time. */
  int edges();

  /** When, ns. */
  long edgeNs(int edge);

  /** Which contact. */
  int edgeContact(int edge);
}
