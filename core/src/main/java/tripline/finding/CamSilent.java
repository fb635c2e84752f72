package tripline.finding;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tripline.assess.Assessment;
import tripline.assess.CamJudgement;
import tripline.develop.Stroke;
import tripline.job.Contact;

/** {@code cam-silent}: a stroke went past and none of the cam's contacts changed. */
final class CamSilent implements Look {
  @Override
  public void look(Assessment assessment, FindingSink sink) {
    Set<String> said = new HashSet<>();
    for (CamJudgement cam : assessment.judged().cams()) {
      if (!cam.silent().isEmpty() && said.add(cam.target().cam())) {
        sink.onFinding(finding(assessment, cam));
      }
    }
  }

  private static Finding finding(Assessment assessment, CamJudgement cam) {
    String name = cam.target().cam();
    List<Contact> contacts =
        assessment.sheet().contacts().stream().filter(c -> c.cam().equals(name)).toList();
    Stroke first = cam.silent().get(0);
    int missed = cam.silent().size();
    String message =
        String.format(
            "Cam %s did not trip: %s stayed as they were %s past it (first %s).",
            name,
            contacts.size() == 1
                ? "its contact " + Text.names(contacts) + " and all it drives"
                : "its contacts " + Text.names(contacts),
            missed == 1 ? "over a stroke" : "over " + missed + " strokes",
            Text.when(first));
    return Draft.of(Code.CAM_SILENT)
        .cam(name)
        .stroke(first)
        .evidence("strokes_missed", missed)
        .says(
            message,
            "Check that the cam's gear is engaged and that it lies within the travel; set it again"
                + " and prove it by stroking past.");
  }
}
