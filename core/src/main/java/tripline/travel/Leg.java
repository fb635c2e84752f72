package tripline.travel;

import java.util.List;
import java.util.Optional;
import tripline.job.Direction;
import tripline.reduce.Movement.Move;
import tripline.reduce.Movement.Rest;
import tripline.reduce.Stopping;

/**
 * Travel one way between two turns of direction, in readings: a stroke before any zero is known.
 *
 * @param recording recording index
 * @param number 0-based within its recording
 * @param setting setting index
 * @param direction which way
 * @param moves its moves in order of time, small ones the other way among them
 * @param from reading at its begin, unwrapped
 * @param to furthest reading, unwrapped
 * @param startNs begin, ns
 * @param endNs standstill where it stood, else end of its last move, ns
 * @param stopping how its last move in its own direction came to a standstill
 * @param rest the rest it ended in, readings unwrapped: of several at the same place the longest
 * @param finished it ended in a rest or a turn of direction, and not with the recording or at an
 *     adjustment on the way
 */
public record Leg(
    int recording,
    int number,
    int setting,
    Direction direction,
    List<Move> moves,
    double from,
    double to,
    long startNs,
    long endNs,
    Stopping stopping,
    Optional<Rest> rest,
    boolean finished) {

  public Leg {
    moves = List.copyOf(moves);
  }

  /** Its longest move in its own direction. */
  public Move mainMove() {
    Move main = moves.get(0);
    for (Move move : moves) {
      if (move.sign() == sign()
          && Math.abs(move.to() - move.from()) > Math.abs(main.to() - main.from())) {
        main = move;
      }
    }
    return main;
  }

  /** Its last move in its own direction. */
  public Move lastMove() {
    Move last = moves.get(0);
    for (Move move : moves) {
      last = move.sign() == sign() ? move : last;
    }
    return last;
  }

  /** Whether a time lies between its begin and its end. */
  public boolean holds(long timeNs) {
    return startNs <= timeNs && timeNs <= endNs;
  }

  private int sign() {
    return to >= from ? 1 : -1;
  }
}
