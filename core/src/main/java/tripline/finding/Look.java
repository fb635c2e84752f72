package tripline.finding;

import tripline.assess.Assessment;

/** Looks for one kind of finding. */
interface Look {
  /**
   * Hands every finding of its kind to the sink; says only what it sees, and leaves to {@link
   * Explanations} whether something else explains it.
   */
  void look(Assessment assessment, FindingSink sink);
}
