package tripline.csv;

/**
 * Carries the first fault from the cell it was found in to the reader; never leaves the package.
 */
final class Refused extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient CsvFault fault;

  Refused(CsvFault fault) {
    super(fault.message(), null, false, false);
    this.fault = fault;
  }

  CsvFault fault() {
    return fault;
  }
}
