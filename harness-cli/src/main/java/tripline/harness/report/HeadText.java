package tripline.harness.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tripline.harness.report.Ink.Tone;
import tripline.job.JobSheet;
import tripline.measure.Decision;
import tripline.result.Result;
import tripline.result.Result.CamResult;
import tripline.result.Result.ContactResult;
import tripline.result.Result.FindingResult;
import tripline.result.Result.RecordingResult;

/** The decision, which valve, what it rests on and, where it is not accepted, on whose account. */
final class HeadText {
  private static final int LABEL = 11;
  private static final int MOST_CONTACTS = 3;
  private static final int MOST_TAG = 40;

  private HeadText() {}

  static void write(Page page, Result result, JobSheet sheet) {
    int tag = Math.min(MOST_TAG, Columns.width(page.safe(result.tag()))) + 3;
    page.row(
        new Page.Cell(verdict(result.decision()), LABEL, Page.tone(result.decision())),
        Page.head(result.tag(), tag),
        Page.cell(sheet.job().description(), Page.WIDTH - LABEL - tag));
    page.labelled("", LABEL, Tone.BODY, basis(result, sheet));
    List<String> why = why(result);
    if (!why.isEmpty()) {
      page.labelled("because", LABEL, Tone.BODY, String.join(", ", why));
    }
  }

  static String verdict(Decision decision) {
    return switch (decision) {
      case ACCEPT -> "ACCEPTED";
      case REJECT -> "REJECTED";
      case UNDECIDED -> "UNDECIDED";
    };
  }

  private static String basis(Result result, JobSheet sheet) {
    List<String> parts = new ArrayList<>();
    if (!sheet.job().workOrder().isEmpty()) {
      parts.add("order " + sheet.job().workOrder());
    }
    for (String drive : List.of("hand", "motor")) {
      boolean motor = drive.equals("motor");
      int strokes = 0;
      int recordings = 0;
      for (RecordingResult recording : result.recordings()) {
        int by = (int) recording.strokes().stream().filter(s -> s.motor() != null == motor).count();
        boolean counts = by > 0 || recording.drive().equals(drive);
        strokes += by;
        recordings += counts ? 1 : 0;
      }
      if (recordings > 0) {
        parts.add(
            counted(strokes, "stroke")
                + " by "
                + drive
                + " in "
                + counted(recordings, "recording"));
      }
    }
    int settings = result.settings().size();
    if (settings > 1) {
      parts.add("setting " + settings + " of " + settings + " is judged");
    }
    return String.join("; ", parts);
  }

  static String counted(int count, String what) {
    return count + " " + what + (count == 1 ? "" : "s");
  }

  static List<String> why(Result result) {
    return switch (result.decision()) {
      case ACCEPT -> List.of();
      case REJECT -> {
        List<String> faults =
            result.findings().stream()
                .filter(f -> f.severity().equals("fault"))
                .map(HeadText::name)
                .distinct()
                .toList();
        yield faults.isEmpty() ? both(result, Decision.REJECT) : faults;
      }
      case UNDECIDED -> both(result, Decision.UNDECIDED);
    };
  }

  /** Single judgements first, then what the strokes say together. */
  private static List<String> both(Result result, Decision decision) {
    List<String> why = new ArrayList<>(those(result, decision));
    if (result.acceptance() != null) {
      why.addAll(AcceptanceReasons.why(result.acceptance(), decision));
    }
    return why.isEmpty() ? why : List.of(String.join("; ", why));
  }

  private static String name(FindingResult finding) {
    String whose = finding.contact() != null ? finding.contact() : finding.cam();
    return whose == null ? finding.code() : finding.code() + " (" + whose + ")";
  }

  /** All that was decided so. */
  private static List<String> those(Result result, Decision decision) {
    List<String> open = new ArrayList<>();
    for (EndView end : EndView.both(result)) {
      if (end.result().decision() == decision) {
        open.add(end.name() + " end");
      }
    }
    result.cams().stream()
        .filter(c -> c.decision() == decision)
        .map(HeadText::name)
        .forEach(open::add);
    List<String> contacts =
        result.contacts().stream()
            .filter(c -> c.decision() == decision)
            .map(ContactResult::contact)
            .toList();
    if (contacts.size() <= MOST_CONTACTS) {
      open.addAll(contacts);
    } else {
      open.add(counted(contacts.size(), "contact"));
    }
    return open.isEmpty()
        ? List.of()
        : List.of(Page.word(decision).toLowerCase(Locale.ROOT) + ": " + String.join(", ", open));
  }

  private static String name(CamResult cam) {
    return "cam " + cam.cam() + (cam.edge() == null ? "" : " " + cam.edge());
  }
}
