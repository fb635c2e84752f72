package tripline.harness;

import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.LayoutBase;

/** A log line: level, class, message; a trace below it where there is one. */
final class LogLines extends LayoutBase<ILoggingEvent> {
  @Override
  public String doLayout(ILoggingEvent event) {
    String logger = event.getLoggerName();
    String line =
        "%-5s %s: %s%n"
            .formatted(
                event.getLevel(),
                logger.substring(logger.lastIndexOf('.') + 1),
                event.getFormattedMessage());
    return event.getThrowableProxy() == null
        ? line
        : line + ThrowableProxyUtil.asString(event.getThrowableProxy());
  }
}
