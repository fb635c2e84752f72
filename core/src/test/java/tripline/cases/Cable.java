package tripline.cases;

import java.util.ArrayList;
import java.util.List;

/** The cable of a logger that is recorded live, and when it was out. */
public final class Cable {
  private final List<Pull> pulls = new ArrayList<>();

  /** Out from one time to another, s. */
  public record Pull(double outS, double backS) {}

  /** Somebody trips over it. */
  public void pull(double outS, double backS) {
    pulls.add(new Pull(outS, backS));
  }

  /** When it was out. */
  public List<Pull> pulls() {
    return List.copyOf(pulls);
  }

  boolean out(double timeS) {
    return pulls.stream().anyMatch(p -> timeS >= p.outS() && timeS < p.backS());
  }
}
