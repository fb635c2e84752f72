package tripline.harness;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.ConsoleAppender;
import ch.qos.logback.core.encoder.LayoutWrappingEncoder;
import ch.qos.logback.core.spi.ContextAwareBase;

/**
 * Logback set up in Java: one appender on standard error.
 *
 * <p>Found by Logback through {@code META-INF/services}. It costs a sixth of the start-up time less
 * than a {@code logback.xml} with the same content, which brings in an XML parser.
 */
public final class LogbackSetup extends ContextAwareBase implements Configurator {
  @Override
  public ExecutionStatus configure(LoggerContext context) {
    LogLines layout = new LogLines();
    layout.setContext(context);
    layout.start();
    LayoutWrappingEncoder<ILoggingEvent> encoder = new LayoutWrappingEncoder<>();
    encoder.setContext(context);
    encoder.setLayout(layout);
    encoder.start();
    ConsoleAppender<ILoggingEvent> appender = new ConsoleAppender<>();
    appender.setContext(context);
    appender.setTarget("System.err");
    appender.setEncoder(encoder);
    appender.start();
    Logger root = context.getLogger(Logger.ROOT_LOGGER_NAME);
    root.setLevel(Level.convertAnSLF4JLevel(Logging.named(System.getenv(Logging.VARIABLE))));
    root.addAppender(appender);
    // Says of every PDF that the base font Symbol, which no record uses, is replaced.
    context.getLogger("org.apache.pdfbox").setLevel(Level.ERROR);
    return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
  }
}
