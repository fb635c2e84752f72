package tripline.finding;

import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import tripline.job.ClosedWhere;
import tripline.job.Contact;
import tripline.job.JobSheet;
import tripline.job.Role;
import tripline.job.TravelPlan;

/** Variants of a sheet: what was intended may be wrong itself. */
final class Recharted {
  private Recharted() {}

  /** Lamp-open from the open cam on, lamp-closed up to the close cam: dark in between. */
  static JobSheet lampsOnQuarter(JobSheet sheet) {
    return contacts(
        sheet,
        c ->
            switch (c.role()) {
              case LAMP_OPEN -> with(c, "open", ClosedWhere.OPEN_SIDE, c.coversPercent());
              case LAMP_CLOSED -> with(c, "close", ClosedWhere.CLOSED_SIDE, c.coversPercent());
              default -> c;
            });
  }

  /** Both lamps lit at the open end. */
  static JobSheet lampsBothOpenSide(JobSheet sheet) {
    return contacts(
        sheet,
        c ->
            c.role() == Role.LAMP_CLOSED
                ? with(c, "close", ClosedWhere.OPEN_SIDE, c.coversPercent())
                : c);
  }

  static JobSheet bypassCovers(JobSheet sheet, double percent) {
    return contacts(
        sheet,
        c ->
            c.coversPercent().isPresent()
                ? with(c, c.cam(), c.closed(), OptionalDouble.of(percent))
                : c);
  }

  /** A contact that is fitted and not wired. */
  static JobSheet spare(JobSheet sheet, String name) {
    return contacts(
        sheet,
        c ->
            c.name().equals(name)
                ? new Contact(
                    name, c.channel(), c.cam(), c.closed(), Role.SPARE, OptionalDouble.empty())
                : c);
  }

  private static Contact with(Contact c, String cam, ClosedWhere closed, OptionalDouble covers) {
    return new Contact(c.name(), c.channel(), cam, closed, c.role(), covers);
  }

  private static JobSheet contacts(JobSheet s, UnaryOperator<Contact> change) {
    return new JobSheet(
        s.job(),
        s.travel(),
        s.position(),
        s.settleNs(),
        s.closed(),
        s.open(),
        s.cams(),
        s.contacts().stream().map(change).toList(),
        s.acceptance(),
        s.torqueClosing(),
        s.torqueOpening(),
        s.motorClosing(),
        s.motorOpening());
  }

  static JobSheet travel(JobSheet s, TravelPlan travel) {
    return new JobSheet(
        s.job(),
        travel,
        s.position(),
        s.settleNs(),
        s.closed(),
        s.open(),
        s.cams(),
        s.contacts(),
        s.acceptance(),
        s.torqueClosing(),
        s.torqueOpening(),
        s.motorClosing(),
        s.motorOpening());
  }
}
