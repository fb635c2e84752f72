package tripline.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Laws; every single remark has a sheet of its own among the harness's test data. */
class SheetSenseTest {
  private static final Contact SHUT =
      contact("11-12", "k1", "c", ClosedWhere.OPEN_SIDE, Role.LIMIT_CLOSING);
  private static final Contact OPEN =
      contact("21-22", "k2", "o", ClosedWhere.CLOSED_SIDE, Role.LIMIT_OPENING);

  @Test
  void aSheetInOrderRaisesNothing() {
    assertThat(SheetSense.of(sheet(List.of(cam("c"), cam("o")), List.of(SHUT, OPEN)))).isEmpty();
  }

  @Test
  void mirroringTheActuatorRaisesTheMirroredRemarks() {
    List<Cam> cams =
        List.of(
            cam("c", new TripPlan(End.CLOSED, 0.7, 0.1, TripPlan.Unit.TURNS)),
            cam("o"),
            cam("l", new TripPlan(End.CLOSED, 2, 1, TripPlan.Unit.PERCENT)),
            cam("far", new TripPlan(End.CLOSED, 40, 1, TripPlan.Unit.TURNS)));
    List<Contact> contacts =
        List.of(
            SHUT,
            OPEN,
            new Contact(
                "S3",
                "k3",
                "l",
                ClosedWhere.CLOSED_SIDE,
                Role.BYPASS_OPENING,
                OptionalDouble.of(1.5)),
            contact("S4", "k4", "far", ClosedWhere.OPEN_SIDE, Role.LAMP_OPEN));
    List<SheetRemark> remarks = SheetSense.of(sheet(cams, contacts));
    List<SheetRemark> mirrored = SheetSense.of(mirror(sheet(cams, contacts)));
    assertThat(remarks).hasSizeGreaterThan(4);
    assertThat(mirrored)
        .extracting(r -> r.severity() + " " + r.path())
        .containsExactlyInAnyOrderElementsOf(
            remarks.stream().map(r -> r.severity() + " " + r.path()).toList());
  }

  @Test
  void renamingChannelsRenamesNothingElse() {
    Contact same = contact("31-32", "k1", "o", ClosedWhere.OPEN_SIDE, Role.SPARE);
    Contact renamed = contact("31-32", "kx", "o", ClosedWhere.OPEN_SIDE, Role.SPARE);
    List<Cam> cams = List.of(cam("c"), cam("o"));
    assertThat(SheetSense.of(sheet(cams, List.of(SHUT, OPEN, same)))).hasSize(1);
    assertThat(SheetSense.of(sheet(cams, List.of(SHUT, OPEN, renamed)))).isEmpty();
  }

  private static Cam cam(String name, TripPlan... trips) {
    return new Cam(name, List.of(trips));
  }

  private static Contact contact(
      String name, String channel, String cam, ClosedWhere closed, Role role) {
    return new Contact(name, channel, cam, closed, role, OptionalDouble.empty());
  }

  private static JobSheet sheet(List<Cam> cams, List<Contact> contacts) {
    EndSetting end = new EndSetting(Seat.LIMIT, 0.5, 0.1, 0.01);
    return new JobSheet(
        new JobIdentity("CW-1", "", ""),
        new TravelPlan(
            OptionalDouble.of(31),
            OptionalDouble.of(0.5),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty()),
        new PositionChannel(SensorSide.HANDWHEEL, 1, 0.0005, 0, 0, 0, OptionalDouble.empty()),
        10_000_000,
        end,
        end,
        cams,
        contacts,
        Acceptance.DEFAULT,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static JobSheet mirror(JobSheet s) {
    List<Cam> cams = new ArrayList<>();
    for (Cam cam : s.cams()) {
      cams.add(
          new Cam(
              cam.name(),
              cam.trips().stream()
                  .map(t -> new TripPlan(t.from().other(), t.distance(), t.tolerance(), t.unit()))
                  .toList()));
    }
    List<Contact> contacts =
        s.contacts().stream()
            .map(
                c ->
                    new Contact(
                        c.name(),
                        c.channel(),
                        c.cam(),
                        c.closed() == ClosedWhere.OPEN_SIDE
                            ? ClosedWhere.CLOSED_SIDE
                            : ClosedWhere.OPEN_SIDE,
                        mirror(c.role()),
                        c.coversPercent()))
            .toList();
    return sheet(cams, contacts);
  }

  private static Role mirror(Role role) {
    return switch (role) {
      case LIMIT_CLOSING -> Role.LIMIT_OPENING;
      case LIMIT_OPENING -> Role.LIMIT_CLOSING;
      case BYPASS_OPENING -> Role.BYPASS_CLOSING;
      case BYPASS_CLOSING -> Role.BYPASS_OPENING;
      case LAMP_OPEN -> Role.LAMP_CLOSED;
      case LAMP_CLOSED -> Role.LAMP_OPEN;
      case INTERLOCK, SPARE -> role;
    };
  }
}
