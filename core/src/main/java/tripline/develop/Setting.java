package tripline.develop;

/**
 * A stretch between adjustments. It may run over several recordings.
 *
 * @param number 0-based
 * @param recording recording in which it begins
 * @param fromS its begin there, s from that recording's first stamp
 * @param toS its end, s from the first stamp of the recording in which it ends
 */
public record Setting(int number, int recording, double fromS, double toS) {}
