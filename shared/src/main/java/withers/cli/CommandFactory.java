package withers.cli;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.time.Clock;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import picocli.CommandLine;
import picocli.CommandLine.IFactory;
import withers.point.Points;
import withers.workspace.BeforeUpgrade;

/**
 * Makes commands and their options: each is given what its only constructor asks for. Types without
 * such a constructor are made by picocli's own factory.
 */
public final class CommandFactory implements IFactory {
  private final Map<Class<?>, Object> things;

  private CommandFactory(Map<Class<?>, Object> things) {
    this.things = things;
  }

  /**
   * A factory that hands these out, each by its own type; nobody is told of points, and stores of
   * an older format are refused.
   */
  public static CommandFactory handing(Console console, Clock clock, Environment environment) {
    return new CommandFactory(
        Map.of(
            Console.class,
            console,
            Clock.class,
            clock,
            Environment.class,
            environment,
            Points.class,
            Points.NONE,
            BeforeUpgrade.class,
            BeforeUpgrade.REFUSED,
            Account.class,
            Account.ofThisProcess()));
  }

  /** A factory that also hands this out to those who ask for the type. */
  public <T> CommandFactory and(Class<T> type, T thing) {
    Map<Class<?>, Object> more = new HashMap<>(things);
    more.put(type, thing);
    return new CommandFactory(more);
  }

  @Override
  public <K> K create(Class<K> type) throws Exception {
    for (Constructor<?> constructor : type.getDeclaredConstructors()) {
      if (isOurs(constructor)) {
        return type.cast(make(constructor));
      }
    }
    return CommandLine.defaultFactory().create(type);
  }

  private boolean isOurs(Constructor<?> constructor) {
    Class<?>[] asked = constructor.getParameterTypes();
    return asked.length > 0 && things.keySet().containsAll(Arrays.asList(asked));
  }

  private Object make(Constructor<?> constructor) throws Exception {
    constructor.setAccessible(true);
    Object[] given = Arrays.stream(constructor.getParameterTypes()).map(things::get).toArray();
    try {
      return constructor.newInstance(given);
    } catch (InvocationTargetException thrown) {
      throw Objects.requireNonNull((Exception) thrown.getCause());
    }
  }
}
