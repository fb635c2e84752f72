package tripline.harness.rehearse.valve;

import tripline.job.Contact;
import tripline.job.End;

/** The cams at work: where their trip points lie now, and on which side of them contacts stand. */
final class Cams {
  /** Takes note of contacts that have come to their other state. */
  interface Watcher {
    /** A contact has; the handwheel was here when it did, going the way it goes. */
    void onChange(int contact, double handwheelTurns);
  }

  private final ValveBuild build;
  private final Follower[] followers;
  private final double[] shift;

  Cams(ValveBuild build, double x) {
    this.build = build;
    shift = new double[build.cams().size()];
    followers = new Follower[build.contacts().size()];
    for (int i = 0; i < followers.length; i++) {
      ContactBuild contact = build.contacts().get(i);
      followers[i] = new Follower(build.cams().get(contact.cam()), contact, x);
    }
  }

  /** A contact's settled state. */
  boolean closed(int contact) {
    return followers[contact].closed();
  }

  /** Somebody turns a cam's adjuster: its trip points move so far, + toward open. */
  void adjust(int cam, double byTurns) {
    shift[cam] += byTurns;
  }

  /** The drive has come here. */
  void follow(double x, Watcher watcher) {
    for (int i = 0; i < followers.length; i++) {
      Follower follower = followers[i];
      double moved = shift[build.contacts().get(i).cam()];
      for (int p = 0; p < follower.points(); p++) {
        double rise = follower.rise(p) + moved;
        double fall = follower.fall(p) + moved;
        boolean above = follower.above(p);
        if (above ? x <= fall : x >= rise) {
          boolean before = follower.closed();
          follower.pass(p);
          if (follower.closed() != before) {
            watcher.onChange(i, above ? fall : rise + build.lostMotionTurns());
          }
        }
      }
    }
  }

  /** Where a trip point lies on the approach to an end, x: that of the contact it is judged by. */
  double tripTurns(int cam, int point, End toward) {
    int contact = judged(cam);
    double own =
        contact < 0
            ? build.cams().get(cam).closingTurns(point)
            : toward == End.CLOSED
                ? followers[contact].fall(point)
                : followers[contact].rise(point);
    return own + shift[cam];
  }

  /** Whether the drive stands beyond a trip point, toward the open end. */
  boolean above(int cam, int point, double x) {
    int contact = judged(cam);
    return contact >= 0 ? followers[contact].above(point) : x > tripTurns(cam, point, End.CLOSED);
  }

  /** Whether the limit contact of an end is open; false where none is charted. */
  boolean limitOpen(End end) {
    for (int i = 0; i < followers.length; i++) {
      if (limitOf(i, end)) {
        return !followers[i].closed();
      }
    }
    return false;
  }

  private boolean limitOf(int contact, End end) {
    Contact charted = build.contacts().get(contact).contact();
    return charted.role().limitOf().filter(end::equals).isPresent();
  }

  /** Its limit contact, else its first in the sheet; -1 for a cam nobody uses. */
  private int judged(int cam) {
    int first = -1;
    for (int i = 0; i < followers.length; i++) {
      if (build.contacts().get(i).cam() == cam) {
        if (limitOf(i, End.CLOSED) || limitOf(i, End.OPEN)) {
          return i;
        }
        first = first < 0 ? i : first;
      }
    }
    return first;
  }
}
