package tripline.truth;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tripline.job.Acceptance;
import tripline.job.Cam;
import tripline.job.Contact;
import tripline.job.EndSetting;
import tripline.job.JobSheet;
import tripline.job.PositionChannel;
import tripline.job.Seat;
import tripline.job.SensorSide;
import tripline.job.TripPlan;

/** A job sheet as the TOML of contract clause 2. */
public final class SheetText {
  private final StringBuilder out = new StringBuilder();

  private SheetText() {}

  public static String of(JobSheet sheet) {
    SheetText text = new SheetText();
    text.identity(sheet);
    text.position(sheet.position());
    text.line("\n[logger]\nsettle_s = %s", number(sheet.settleNs() * 1e-9));
    text.end("closed", sheet.closed());
    text.end("open", sheet.open());
    sheet.cams().forEach(text::cam);
    sheet.contacts().forEach(text::contact);
    if (!sheet.acceptance().equals(Acceptance.DEFAULT)) {
      text.line(
          "\n[acceptance]\nstrokes = %d\nconfidence = %s\nshare = %s",
          sheet.acceptance().strokes(),
          number(sheet.acceptance().confidence()),
          number(sheet.acceptance().share()));
    }
    text.channels("torque", sheet.torqueClosing(), sheet.torqueOpening());
    text.channels("motor", sheet.motorClosing(), sheet.motorOpening());
    return text.out.toString();
  }

  private void identity(JobSheet sheet) {
    line("[job]\ntag = \"%s\"", sheet.job().tag());
    line("description = \"%s\"", sheet.job().description());
    line("work_order = \"%s\"\n\n[travel]", sheet.job().workOrder());
    optional("span", sheet.travel().spanTurns());
    optional("span_tolerance", sheet.travel().spanToleranceTurns());
    optional("lost_motion", sheet.travel().lostMotionTurns());
    optional("differential", sheet.travel().differentialTurns());
    optional("stroke_time_s", sheet.travel().strokeTimeS());
    optional("stroke_time_tolerance_s", sheet.travel().strokeTimeToleranceS());
  }

  private void position(PositionChannel p) {
    line("\n[position]\nside = \"%s\"", p.side() == SensorSide.HANDWHEEL ? "handwheel" : "drive");
    line("turns_per_unit = %s", number(p.turnsPerUnit()));
    line("resolution = %s", number(p.resolution()));
    line("scale_u = %s", number(p.scaleU()));
    line("skew_s = %s\nskew_u_s = %s", number(p.skewNs() * 1e-9), number(p.skewUNs() * 1e-9));
    optional("modulus", p.modulus());
  }

  private void end(String name, EndSetting end) {
    line("\n[ends.%s]\nseat = \"%s\"", name, end.seat() == Seat.LIMIT ? "limit" : "torque");
    line("backoff = %s\ntolerance = %s", number(end.backoffTurns()), number(end.toleranceTurns()));
    line("stop_u = %s", number(end.stopUTurns()));
  }

  private void cam(Cam cam) {
    line("\n[[cam]]\nname = \"%s\"", cam.name());
    List<String> trips = cam.trips().stream().map(SheetText::trip).toList();
    if (trips.size() == 1) {
      line("trip = %s", trips.get(0));
    } else if (trips.size() == 2) {
      line("trip = [%s, %s]", trips.get(0), trips.get(1));
    }
  }

  private static String trip(TripPlan trip) {
    String unit = trip.unit() == TripPlan.Unit.TURNS ? "turns" : "percent";
    return String.format(
        "{ from = \"%s\", %s = %s, tolerance = %s }",
        trip.from().word(), unit, number(trip.distance()), number(trip.tolerance()));
  }

  private void contact(Contact c) {
    line("\n[[contact]]\nname = \"%s\"\nchannel = \"%s\"", c.name(), c.channel());
    line("cam = \"%s\"\nclosed = \"%s\"", c.cam(), c.closed().word());
    line("role = \"%s\"", c.role().word());
    optional("covers", c.coversPercent());
  }

  private void channels(String table, Optional<String> closing, Optional<String> opening) {
    if (closing.isPresent() || opening.isPresent()) {
      line("\n[%s]", table);
      closing.ifPresent(c -> line("closing = { channel = \"%s\" }", c));
      opening.ifPresent(c -> line("opening = { channel = \"%s\" }", c));
    }
  }

  private void optional(String key, OptionalDouble value) {
    value.ifPresent(v -> line("%s = %s", key, number(v)));
  }

  private static String number(double value) {
    return java.math.BigDecimal.valueOf(value).stripTrailingZeros().scale() <= 0
        ? java.math.BigDecimal.valueOf(value).setScale(1).toPlainString()
        : java.math.BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  private void line(String format, Object... values) {
    out.append(String.format(java.util.Locale.ROOT, format, values)).append('\n');
  }
}
