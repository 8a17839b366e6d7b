package withers.workspace;

import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import withers.schedule.Action;
import withers.schedule.Cron;
import withers.schedule.DueTimes;
import withers.schedule.ScheduledJob;
import withers.yaml.Fields;
import withers.yaml.Values;

/**
 * Reads {@code schedule} of {@code withers.yaml}.
 *
 * @param zone the workspace's, for jobs that state none
 * @param canSend whether a mail server is stated
 */
record ScheduleReader(ZoneId zone, boolean canSend) {
  private static final Cron NOW_AND_THEN = Cron.read("0 0 1 1 *");

  List<ScheduledJob> read(Fields settings) {
    return List.copyOf(settings.mapOfMaps("schedule", this::job).values());
  }

  private ScheduledJob job(String name, Fields fields) {
    DueTimes times =
        new DueTimes(
            fields.value("cron", Cron::read, NOW_AND_THEN),
            fields.optionalValue("zone", Values::zone).orElse(zone));
    fields.require("actions");
    List<Action> stated = fields.choices("actions", Action.class);
    Set<Action> actions = stated.isEmpty() ? EnumSet.of(Action.INGEST) : EnumSet.copyOf(stated);
    check(actions, fields);
    return new ScheduledJob(name, times, actions);
  }

  private void check(Set<Action> actions, Fields fields) {
    if (actions.contains(Action.SEND) && !actions.contains(Action.REPORT)) {
      fields.problem(
          "actions",
          "Expected report beside send, but found none",
          "mails are made by a report: add it");
    }
    if (actions.contains(Action.SEND) && !canSend) {
      fields.problem(
          "actions",
          "Expected a mail server to send through, but found none",
          "state it as \"mail: {server: {host: ...}}\", or leave send out");
    }
  }
}
