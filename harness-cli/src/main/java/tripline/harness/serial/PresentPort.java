package tripline.harness.serial;

import java.util.Optional;

/**
 * A serial port of this machine.
 *
 * @param path what to give as {@code --port}
 * @param description what the system calls it
 * @param usb vendor and product, as {@code 1a86:7523}; empty for a port that is not on USB
 * @param serial number of the adapter, empty if it states none
 * @param lasting a path that stays the same wherever it is plugged in, where the system keeps one
 */
public record PresentPort(
    String path,
    String description,
    Optional<String> usb,
    Optional<String> serial,
    Optional<String> lasting) {}
