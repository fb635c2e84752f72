package tripline.harness.ending;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Signals of the system. The runtime offers them in module {@code jdk.unsupported} only, whose
 * types the compiler warns of without a way to say no; so they are found by name.
 */
final class Signals {
  private static final Logger LOG = LoggerFactory.getLogger(Signals.class);

  private Signals() {}

  /** Does something at every signal of a name, on a thread of the runtime, from now on. */
  static void on(String name, Runnable what) {
    try {
      Class<?> signal = Class.forName("sun.misc.Signal");
      Class<?> handler = Class.forName("sun.misc.SignalHandler");
      Object mine =
          Proxy.newProxyInstance(
              Signals.class.getClassLoader(),
              new Class<?>[] {handler},
              (proxy, method, arguments) -> answer(method.getName(), what));
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

  private static Object answer(String method, Runnable what) {
    return switch (method) {
      case "handle" -> {
        what.run();
        yield true;
      }
      case "hashCode" -> System.identityHashCode(what);
      case "equals" -> false;
      default -> "a signal";
    };
  }
}
