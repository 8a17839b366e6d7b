package withers.schedule;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What is done by itself, and when.
 *
 * @param name how people call it; a file is named after it
 * @param actions what it does, at least one thing; mails are sent of a report that it makes
 */
public record ScheduledJob(String name, DueTimes times, Set<Action> actions) {
  private static final Pattern NAME = Pattern.compile("[a-z0-9]([a-z0-9-]{0,38}[a-z0-9])?");

  /**
   * A job.
   *
   * @throws IllegalArgumentException when it does nothing, or its name is none
   */
  public ScheduledJob {
    if (!NAME.matcher(name).matches()) {
      throw new IllegalArgumentException(
          "Expected a job's name of 1 to 40 lower-case letters, digits and dashes, but found another");
    }
    if (actions.isEmpty()) {
      throw new IllegalArgumentException("Expected a job that does something, but found none");
    }
    actions = Collections.unmodifiableSet(EnumSet.copyOf(actions));
  }
}
