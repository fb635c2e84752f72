package tripline;

/** The version of the product, as results and reports state it. */
public final class Version {
  /** Same text as the version of the Maven project; a test compares them. */
  public static final String TEXT = "0.1.0";

  private Version() {}
}
