package tripline.harness.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.Writer;
import java.util.Iterator;
import java.util.Map;
import tripline.Version;
import tripline.result.Result;
import tripline.result.Result.AsFound;
import tripline.result.Result.ContactResult;
import tripline.result.Result.FindingResult;
import tripline.result.Result.SettingResult;
import tripline.result.Result.Stretch;
import tripline.result.Result.TravelResult;
import tripline.result.Result.TripResult;

/**
 * The result file. Keys stand in a fixed order, absent figures are {@code null}, numbers have nine
 * significant digits; the same result gives the same bytes.
 */
public final class ResultJson {
  /** Raised when a key changes its meaning; never for an addition. */
  public static final int FORMAT = 1;

  private ResultJson() {}

  /**
   * Writes a result as one JSON object; leaves the writer open.
   *
   * @throws IOException if the writer refuses
   */
  public static void write(Result result, Provenance from, Writer out) throws IOException {
    try (JsonGenerator g = JsonOut.generator(out)) {
      write(result, from, new JsonOut(g));
      g.writeRaw('\n');
    }
  }

  private static void write(Result result, Provenance from, JsonOut out) throws IOException {
    out.open();
    out.number("format", FORMAT);
    out.text("tripline", Version.TEXT);
    out.decision("decision", result.decision());
    out.open("job");
    out.text("tag", result.tag());
    out.text("file", from.jobFile());
    out.text("sha256", from.jobSha256());
    out.close();
    out.object(
        "reference",
        from.reference().orElse(null),
        (source, o) -> {
          o.text("file", source.file());
          o.text("sha256", source.sha256());
        });
    Iterator<Provenance.Made> made = from.recordings().iterator();
    out.list(
        "recordings",
        result.recordings(),
        (recording, o) ->
            RecordingJson.write(
                recording, made.hasNext() ? made.next() : Provenance.Made.UNKNOWN, o));
    out.open("travel");
    travel(result.travel(), out);
    out.close();
    out.list("settings", result.settings(), ResultJson::setting);
    out.list("changes", result.changes(), ChangeJson::write);
    out.list("cams", result.cams(), CamJson::write);
    out.list("contacts", result.contacts(), ResultJson::contact);
    out.open("ends");
    EndJson.write(result.ends(), out);
    out.close();
    out.list("findings", result.findings(), ResultJson::finding);
    out.list("as_found", result.asFound(), ResultJson::asFound);
    if (result.acceptance() != null) {
      out.object("acceptance", result.acceptance(), AcceptanceJson::write);
    }
    out.close();
  }

  private static void travel(TravelResult travel, JsonOut out) throws IOException {
    out.text("datum", travel.datum());
    out.number("datum_position", (Double) travel.datumPosition());
    out.open("sensor");
    out.text("side", travel.sensor().side());
    out.number("turns_per_unit", (Double) travel.sensor().turnsPerUnit());
    out.number("scale_u", (Double) travel.sensor().scaleU());
    out.close();
    RecordingJson.stop("closed_stop", travel.closedStop(), out);
    RecordingJson.stop("open_stop", travel.openStop(), out);
    out.measured("span", travel.span());
    out.measured("lost_motion", travel.lostMotion());
    out.text("lost_motion_note", travel.lostMotionNote());
  }

  private static void setting(SettingResult setting, JsonOut out) throws IOException {
    out.number("number", setting.number());
    out.number("recording", setting.recording());
    out.number("from_s", setting.fromS());
    out.number("to_s", setting.toS());
    out.truth("judged", setting.judged());
  }

  private static void contact(ContactResult contact, JsonOut out) throws IOException {
    out.text("contact", contact.contact());
    out.text("role", contact.role());
    out.text("cam", contact.cam());
    out.decision("decision", contact.decision());
    out.truth("as_charted", contact.asCharted());
    out.truth("exercised", contact.exercised());
    out.number("worst_settle_s", contact.worstSettleS());
    out.list("closed_opening", contact.closedOpening(), ResultJson::stretch);
    out.list("closed_closing", contact.closedClosing(), ResultJson::stretch);
    out.list("trips", contact.trips(), ResultJson::trip);
  }

  private static void trip(TripResult trip, JsonOut out) throws IOException {
    out.text("edge", trip.edge());
    out.text("direction", trip.direction());
    out.text("to", trip.to());
    out.number("position", (Double) trip.position().value());
    out.number("u", (Double) trip.position().u());
    out.number("u95", (Double) trip.position().u95());
    out.number("strokes", trip.strokes());
    out.number("spread", (Double) trip.spread());
    out.parts(trip.position());
  }

  private static void stretch(Stretch stretch, JsonOut out) throws IOException {
    out.number("from", stretch.from());
    out.number("to", stretch.to());
  }

  private static void finding(FindingResult finding, JsonOut out) throws IOException {
    out.text("code", finding.code());
    out.text("severity", finding.severity());
    out.text("contact", finding.contact());
    out.text("cam", finding.cam());
    out.number("recording", finding.recording());
    out.number("stroke", finding.stroke());
    out.number("time_s", finding.timeS());
    out.text("message", finding.message());
    out.open("evidence");
    for (Map.Entry<String, Object> entry : finding.evidence().entrySet()) {
      out.any(entry.getKey(), entry.getValue());
    }
    out.close();
    out.text("action", finding.action());
  }

  private static void asFound(AsFound found, JsonOut out) throws IOException {
    out.number("setting", found.setting());
    out.list("cams", found.cams(), CamJson::write);
    out.list("contacts", found.contacts(), ResultJson::contact);
    out.open("ends");
    EndJson.write(found.ends(), out);
    out.close();
  }
}
