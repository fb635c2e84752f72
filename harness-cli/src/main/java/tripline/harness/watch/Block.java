package tripline.harness.watch;

import java.util.List;

/**
 * A part of the screen.
 *
 * @param rank 1 is shown before all others where there is little room
 * @param least rows without which it is of no use
 * @param rest what becomes of room that nobody needs
 * @param lines from top to bottom
 */
record Block(int rank, int least, Rest rest, List<Line> lines) {
  /** Whether a block is as high as its lines, whatever they are. */
  enum Rest {
    /** It is: what lies below it must not jump when other text comes. */
    LEFT_ALONE,
    /** It fills what is left over. */
    FILLED
  }

  Block {
    lines = List.copyOf(lines);
    if (least > lines.size()) {
      throw new IllegalArgumentException("a block of fewer lines than it needs");
    }
  }

  static Block of(int rank, int least, List<Line> lines) {
    return new Block(rank, least, Rest.LEFT_ALONE, lines);
  }

  static Block line(int rank, Line line) {
    return of(rank, 1, List.of(line));
  }
}
