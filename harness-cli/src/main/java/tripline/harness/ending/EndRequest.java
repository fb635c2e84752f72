package tripline.harness.ending;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Whether the process was told to end. Once listened for, the first such signal is only a request:
 * the command ends in its own time and way, with its own exit status. A second one ends the process
 * at once.
 *
 * <p>The runtime offers this in module {@code jdk.unsupported} only, whose types the compiler warns
 * of without a way to say no; so they are found by name. A shutdown hook would come too late: by
 * then the serial library closes its ports beside it.
 */
public final class EndRequest implements BooleanSupplier {
  private static final Logger LOG = LoggerFactory.getLogger(EndRequest.class);
  private static final String[] SIGNALS = {"INT", "TERM", "HUP"};

  /** What a shell makes of SIGINT: 128 and its number. */
  private static final int INTERRUPTED = 130;

  private final AtomicBoolean asked = new AtomicBoolean();

  private EndRequest() {}

  /** Begins to listen for signals. */
  public static EndRequest ofProcess() {
    EndRequest request = new EndRequest();
    for (String name : SIGNALS) {
      request.listen(name);
    }
    return request;
  }

  private void listen(String name) {
    try {
      Class<?> signal = Class.forName("sun.misc.Signal");
      Class<?> handler = Class.forName("sun.misc.SignalHandler");
      Object mine =
          Proxy.newProxyInstance(
              EndRequest.class.getClassLoader(),
              new Class<?>[] {handler},
              (proxy, method, arguments) -> answer(method.getName()));
      Object which = signal.getConstructor(String.class).newInstance(name);
      var handle = signal.getMethod("handle", signal, handler);
      Object before = handle.invoke(null, which, mine);
      if (handler.getField("SIG_IGN").get(null) == before) {
        // nohup: whoever started this wants it to outlive its terminal.
        handle.invoke(null, which, before);
      }
    } catch (InvocationTargetException e) {
      LOG.debug("signal {} cannot be handled: {}", name, e.getCause());
    } catch (ReflectiveOperationException e) {
      LOG.debug("signal {} cannot be handled", name, e);
    }
  }

  private Object answer(String method) {
    return switch (method) {
      case "handle" -> {
        if (asked.getAndSet(true)) {
          Runtime.getRuntime().halt(INTERRUPTED);
        }
        yield true;
      }
      case "hashCode" -> System.identityHashCode(this);
      case "equals" -> false;
      default -> "ends the command";
    };
  }

  /** Whether the process was told to end. */
  @Override
  public boolean getAsBoolean() {
    return asked.get();
  }
}
