package tripline.job;

/** Roles against where a contact is charted closed, and against the end they belong to. */
final class RoleSense {
  private RoleSense() {}

  static void check(JobSheet sheet, Remarks remarks) {
    for (int i = 0; i < sheet.contacts().size(); i++) {
      side(sheet.contacts().get(i), i, remarks);
    }
    for (End end : End.values()) {
      if (LimitSense.limits(sheet, end).isEmpty()) {
        absent(sheet, end, remarks);
      }
    }
  }

  private static void side(Contact contact, int index, Remarks remarks) {
    ClosedWhere right;
    String why;
    switch (contact.role()) {
      case LIMIT_CLOSING -> {
        right = ClosedWhere.OPEN_SIDE;
        why = "closed in mid-travel and opens at the closed end";
      }
      case LIMIT_OPENING -> {
        right = ClosedWhere.CLOSED_SIDE;
        why = "closed in mid-travel and opens at the open end";
      }
      case BYPASS_OPENING -> {
        right = ClosedWhere.CLOSED_SIDE;
        why = "closed from the closed end on";
      }
      case BYPASS_CLOSING -> {
        right = ClosedWhere.OPEN_SIDE;
        why = "closed from the open end on";
      }
      case LAMP_OPEN -> {
        right = ClosedWhere.OPEN_SIDE;
        why = "lit from the open end through mid-travel";
      }
      case LAMP_CLOSED -> {
        right = ClosedWhere.CLOSED_SIDE;
        why = "lit from the closed end through mid-travel";
      }
      default -> {
        return;
      }
    }
    boolean opposite =
        contact.closed()
            == (right == ClosedWhere.OPEN_SIDE ? ClosedWhere.CLOSED_SIDE : ClosedWhere.OPEN_SIDE);
    if (opposite) {
      remarks.error(
          Remarks.contact(index, "closed"),
          "\"%s\" against role %s, which is %s, expected \"%s\""
              .formatted(contact.closed().word(), contact.role().word(), why, right.word()),
          Remarks.contact(index, "role"));
    }
  }

  private static void absent(JobSheet sheet, End end, Remarks remarks) {
    Role bypass = end == End.CLOSED ? Role.BYPASS_OPENING : Role.BYPASS_CLOSING;
    Role limit = end == End.CLOSED ? Role.LIMIT_CLOSING : Role.LIMIT_OPENING;
    boolean relied = false;
    for (int i = 0; i < sheet.contacts().size(); i++) {
      if (sheet.contacts().get(i).role() == bypass) {
        relied = true;
        remarks.doubt(
            Remarks.contact(i, "role"),
            "%s belongs to the %s end, which has no contact with role %s: that end is not judged"
                .formatted(bypass.word(), end.word(), limit.word()),
            "contact[*].role");
      }
    }
    if (!relied) {
      remarks.doubt(
          "contact",
          "no contact has role %s: the setting of the %s end is not judged"
              .formatted(limit.word(), end.word()),
          "contact[*].role");
    }
  }
}
