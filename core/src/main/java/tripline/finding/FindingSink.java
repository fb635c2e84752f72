package tripline.finding;

/** Takes findings as they are made. */
interface FindingSink {
  void onFinding(Finding finding);
}
