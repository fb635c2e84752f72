package tripline.harness.command;

/** What the process tells the one that started it; scripts hold on to the numbers. */
public enum ExitStatus {
  /** The setting is accepted, or the command did what it was asked. */
  ACCEPTED(0),
  /** The setting is rejected. */
  REJECTED(1),
  /** The command line is wrong. */
  USAGE(2),
  /** Too little was exercised, or it is known too loosely, to decide. */
  UNDECIDED(3),
  /** An input cannot be used. */
  INPUT(4),
  /** The link to the logger failed. */
  LINK(5),
  /** An answer could not be written. */
  OUTPUT(6),
  /** A fault of the product itself; the number is EX_SOFTWARE of BSD's sysexits.h. */
  FAULT(70);

  private final int code;

  ExitStatus(int code) {
    this.code = code;
  }

  /** The number handed to the operating system. */
  public int code() {
    return code;
  }
}
