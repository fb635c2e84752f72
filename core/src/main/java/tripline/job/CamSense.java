package tripline.job;

import java.util.Optional;

/** Cams against the contacts they carry: one trip point has two sides, two have an inside. */
final class CamSense {
  private CamSense() {}

  static void check(JobSheet sheet, Remarks remarks) {
    for (int i = 0; i < sheet.contacts().size(); i++) {
      side(sheet, i, remarks);
    }
    for (int i = 0; i < sheet.cams().size(); i++) {
      target(sheet, i, remarks);
    }
  }

  /** The index of a contact's cam in the sheet, or -1. */
  static int camOf(JobSheet sheet, Contact contact) {
    for (int i = 0; i < sheet.cams().size(); i++) {
      if (sheet.cams().get(i).name().equals(contact.cam())) {
        return i;
      }
    }
    return -1;
  }

  private static void side(JobSheet sheet, int index, Remarks remarks) {
    Contact contact = sheet.contacts().get(index);
    int cam = camOf(sheet, contact);
    if (cam < 0) {
      return;
    }
    boolean between =
        contact.closed() == ClosedWhere.INSIDE || contact.closed() == ClosedWhere.OUTSIDE;
    boolean window = sheet.cams().get(cam).isWindow();
    if (between != window) {
      remarks.error(
          Remarks.contact(index, "closed"),
          "\"%s\" on cam \"%s\", which has %s, expected %s"
              .formatted(
                  contact.closed().word(),
                  contact.cam(),
                  window ? "two trip points" : "one trip point",
                  window ? "\"inside\" or \"outside\"" : "\"open-side\" or \"closed-side\""),
          Remarks.contact(index, "cam"),
          "cam[*].name",
          Remarks.cam(cam, "trip"));
    }
  }

  private static void target(JobSheet sheet, int index, Remarks remarks) {
    Cam cam = sheet.cams().get(index);
    Optional<End> limit =
        sheet.contacts().stream()
            .filter(c -> c.cam().equals(cam.name()))
            .flatMap(c -> c.role().limitOf().stream())
            .findFirst();
    if (cam.trips().isEmpty() && limit.isEmpty()) {
      remarks.error(
          Remarks.cam(index, "name"),
          "cam \"%s\" states no trip and carries no limit contact, expected a trip = { ... }"
                  .formatted(cam.name())
              + " or a contact whose role is limit-closing or limit-opening",
          Remarks.cam(index, "trip"),
          "contact[*].role",
          "contact[*].cam");
    }
  }
}
