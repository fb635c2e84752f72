package tripline.finding;

import java.util.ArrayList;
import java.util.List;
import tripline.assess.Assessment;
import tripline.job.Contact;
import tripline.job.JobSheet;
import tripline.job.Role;

/** Everything worth reporting of an assessment: what is seen, less what is explained already. */
public final class Findings {
  private static final List<Look> LOOKS =
      List.of(
          new CamOutOfPlace(),
          new CamSilent(),
          new ContactsExchanged(),
          new ContactInverted(),
          new ContactStuck(),
          new ContactOffCam(),
          new ContactsOverlap(),
          new ContactIntermittent(),
          new ContactChatter(),
          new ContactMovedAtRest(),
          new TripDrift(),
          new TripScatter(),
          new DifferentialLarge(),
          new LostMotionLarge(),
          new StoppedOnTorque(),
          new LimitAfterTorque(),
          new CoastReachesStop(),
          new MotorReversed(),
          new StrokeTimeOff(),
          new LampsDark(),
          new LampsWrong(),
          new BypassShort(),
          new SpanOff(),
          new StopUnknown(),
          new RecordingApart(),
          new PositionSlip(),
          new PositionFrozen(),
          new RecordingFaults(),
          new TimeBackwards());

  private Findings() {}

  /** Findings of an assessment, worst first. */
  public static List<Finding> of(Assessment assessment) {
    List<Finding> seen = new ArrayList<>();
    LOOKS.forEach(look -> look.look(assessment, f -> seen.add(weighed(f, assessment.sheet()))));
    List<Finding> left = new ArrayList<>(Explanations.unexplained(seen));
    left.sort(Findings::worstFirst);
    return Explanations.causesFirst(left);
  }

  private static int worstFirst(Finding a, Finding b) {
    int severity = a.severity().compareTo(b.severity());
    return severity != 0 ? severity : a.code().compareTo(b.code());
  }

  /** A fault that is about spares alone is a note: they are fitted, not wired. */
  private static Finding weighed(Finding finding, JobSheet sheet) {
    List<Contact> about =
        sheet.contacts().stream()
            .filter(
                c ->
                    finding.contacts().isEmpty()
                        ? finding.cams().contains(c.cam())
                        : finding.contacts().contains(c.name()))
            .toList();
    boolean spare = !about.isEmpty() && about.stream().allMatch(c -> c.role() == Role.SPARE);
    return spare && finding.severity() == Severity.FAULT ? finding.at(Severity.NOTE) : finding;
  }
}
