package tripline.study;

/** Everything counted in one cell. */
final class Score {
  final ChangeScore changes = new ChangeScore();
  final BackoffScore backoffs = new BackoffScore();

  void merge(Score other) {
    changes.merge(other.changes);
    backoffs.merge(other.backoffs);
  }
}
