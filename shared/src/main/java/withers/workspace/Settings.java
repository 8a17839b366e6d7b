package withers.workspace;

import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import withers.id.OrganisationId;
import withers.kafka.KafkaSettings;
import withers.organisation.PeriodDays;
import withers.schedule.ScheduledJob;

/**
 * What {@code withers.yaml} states.
 *
 * @param network the network's name, shown on lists and in mail
 * @param zone whose calendar says what today is
 * @param phoneRegion the country whose rules read a phone without a country code: ISO 3166-1
 *     alpha-2, or {@link #UNKNOWN_REGION}
 * @param language of lists and mail
 * @param testNumbers whether numbers under the test code are taken
 * @param coordinator who gets the overview and whatever nobody else can act on; an organisation of
 *     the directory
 * @param periods those that count unless a region or an organisation states others
 * @param regions periods by the region of an organisation, as its entry names it
 * @param handoverWindowDays days that two reports of one handover may lie apart, from 0
 * @param listCap how many follow-ups of an organisation's beginning its list shows beyond those of
 *     today and this week; 0 for all
 * @param answerWaitDays how many days records are given to show what an organisation answered
 * @param settleSeconds how long a file in the inbox must have been left alone to be read, from 0
 * @param unchangedRecords whether imports recognise records that did not change
 * @param matching the file of the workspace's own parameters of matching, within the workspace;
 *     empty when the built-in ones count
 * @param schedule what is done by itself, in the order of the file
 * @param scheduleStore where several schedulers keep what was done of it; empty for the workspace
 * @param kafka where the event log is on Apache Kafka; empty for the embedded log
 * @param watch who may see how the schedule goes, and how
 * @param caseWorkers accounts of the system whose holders may be shown private people
 * @param retention how long what can be deleted is kept
 * @param mail what goes out by mail, when, and how
 */
public record Settings(
    String network,
    ZoneId zone,
    String phoneRegion,
    Locale language,
    TestNumbers testNumbers,
    OrganisationId coordinator,
    PeriodDays periods,
    Map<String, PeriodDays> regions,
    int handoverWindowDays,
    int listCap,
    int answerWaitDays,
    int settleSeconds,
    UnchangedRecords unchangedRecords,
    Optional<String> matching,
    List<ScheduledJob> schedule,
    Optional<StoreSettings> scheduleStore,
    Optional<KafkaSettings> kafka,
    WatchSettings watch,
    Set<String> caseWorkers,
    Retention retention,
    MailSettings mail) {

  /**
   * Stands for no country: only phones written with a country code can be compared (Unicode CLDR's
   * code).
   */
  public static final String UNKNOWN_REGION = "ZZ";

  public static final int DEFAULT_HANDOVER_WINDOW_DAYS = 3;

  public static final int DEFAULT_LIST_CAP = 60;

  public static final int DEFAULT_ANSWER_WAIT_DAYS = 45;

  public static final int DEFAULT_SETTLE_SECONDS = 10;

  public Settings {
    regions = Map.copyOf(regions);
    schedule = List.copyOf(schedule);
    caseWorkers = Set.copyOf(caseWorkers);
  }

  /** Whether numbers under the test code are taken. */
  public boolean acceptsTestNumbers() {
    return testNumbers == TestNumbers.ACCEPTED;
  }
}
