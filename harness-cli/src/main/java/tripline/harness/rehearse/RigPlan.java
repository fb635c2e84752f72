package tripline.harness.rehearse;

import tripline.harness.rehearse.valve.Setting;
import tripline.job.JobSheet;
import tripline.link.Encoding;

/**
 * What a rig is made of.
 *
 * @param sheet what its valve was built after
 * @param setting how it was left
 * @param seed everything that is left to chance
 * @param kit how much of a logger it has
 * @param talks the encoding its logger begins in; a small one has lines only
 * @param uptimeS how long its logger has been on at the begin, s; its clock wraps at 4294.967 s
 * @param baud line rate; 0: as fast as the other end takes it
 */
public record RigPlan(
    JobSheet sheet,
    Setting setting,
    long seed,
    Kit kit,
    Encoding talks,
    double uptimeS,
    int baud) {}
