package tripline.reduce;

/**
 * Mean and spread of the speed over the steady middle of a move: the first half second and the last
 * second left out.
 */
final class Speeds {
  private static final long PIECE_NS = 250_000_000;
  private static final int SKIP = 2;
  private static final int HELD_BACK = 4;

  private final double[] held = new double[HELD_BACK];
  private long firstNs;
  private double first;
  private long pieceNs;
  private double piece;
  private long lastNs;
  private double last;
  private int pieces;
  private int taken;
  private double mean;
  private double squares;

  void begin(long timeNs, double reading) {
    firstNs = timeNs;
    first = reading;
    pieceNs = timeNs;
    piece = reading;
    lastNs = timeNs;
    last = reading;
    pieces = 0;
    taken = 0;
    mean = 0;
    squares = 0;
  }

  void onBlock(long timeNs, double reading) {
    lastNs = timeNs;
    last = reading;
    if (timeNs - pieceNs < PIECE_NS) {
      return;
    }
    double speed = (reading - piece) / ((timeNs - pieceNs) * 1e-9);
    pieceNs = timeNs;
    piece = reading;
    int slot = pieces % HELD_BACK;
    if (pieces >= SKIP + HELD_BACK) {
      take(held[slot]);
    }
    held[slot] = speed;
    pieces++;
  }

  private void take(double speed) {
    taken++;
    double off = speed - mean;
    mean += off / taken;
    squares += off * (speed - mean);
  }

  Movement.Speed run() {
    if (taken >= 2) {
      double s = Math.sqrt(squares / (taken - 1));
      return new Movement.Speed(mean, s / Math.sqrt(taken), mean == 0 ? 0 : s / Math.abs(mean));
    }
    double seconds = (lastNs - firstNs) * 1e-9;
    double speed = seconds > 0 ? (last - first) / seconds : 0;
    return new Movement.Speed(speed, Math.abs(speed) / 2, 0.5);
  }

  /** Stands where another one stands. */
  void become(Speeds other) {
    System.arraycopy(other.held, 0, held, 0, HELD_BACK);
    firstNs = other.firstNs;
    first = other.first;
    pieceNs = other.pieceNs;
    piece = other.piece;
    lastNs = other.lastNs;
    last = other.last;
    pieces = other.pieces;
    taken = other.taken;
    mean = other.mean;
    squares = other.squares;
  }
}
