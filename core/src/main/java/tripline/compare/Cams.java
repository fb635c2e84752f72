package tripline.compare;

import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tripline.result.Result.CamResult;

/** Trip points of cams by name. */
final class Cams {
  private Cams() {}

  static String name(CamResult cam) {
    return name(cam.cam(), cam.edge());
  }

  static String name(String cam, @Nullable String edge) {
    return edge == null ? cam : cam + " " + edge;
  }

  /** The same trip point in another result. */
  static Optional<CamResult> find(Account account, CamResult cam) {
    return account.cams().stream()
        .filter(c -> c.cam().equals(cam.cam()) && Objects.equals(c.edge(), cam.edge()))
        .findFirst();
  }
}
