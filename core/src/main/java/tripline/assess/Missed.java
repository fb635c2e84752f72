package tripline.assess;

import tripline.develop.Stroke;
import tripline.sample.ContactState;

/**
 * A stroke that passed a contact's cam without a change of the contact.
 *
 * @param stroke the stroke
 * @param stayed the state it stayed in
 * @param by whether anything else on the cam changed
 */
public record Missed(Stroke stroke, ContactState stayed, By by) {
  /** Who missed it. */
  public enum By {
    /** The contact alone: others of its cam changed in the same stroke. */
    CONTACT,
    /** Every contact of the cam. */
    CAM
  }
}
