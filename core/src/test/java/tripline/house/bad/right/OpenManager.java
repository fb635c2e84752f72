package tripline.house.bad.right;

/** Public, open to extension, and named after nothing. */
public class OpenManager {}
