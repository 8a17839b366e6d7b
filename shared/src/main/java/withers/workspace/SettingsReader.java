package withers.workspace;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.IllformedLocaleException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import withers.id.OrganisationId;
import withers.organisation.NameSpelling;
import withers.organisation.PeriodDays;
import withers.workspace.Retention.Kept;
import withers.yaml.Fields;
import withers.yaml.Nearest;
import withers.yaml.Refusal;
import withers.yaml.Values;

/** Reads {@code withers.yaml}. */
final class SettingsReader {
  private static final int LONGEST_HANDOVER_WINDOW = 31;
  private static final int LARGEST_LIST_CAP = 10_000;
  private static final int LONGEST_ANSWER_WAIT = 366;
  private static final int LONGEST_SETTLING = 600;
  private static final int LONGEST_RETENTION = 36_600;
  private static final Pattern ACCOUNT = Pattern.compile("[^\\s@:/]{1,64}");
  private static final List<String> REGIONS = Arrays.asList(Locale.getISOCountries());
  private static final OrganisationId NOBODY = new OrganisationId("nobody");

  private final Optional<Set<OrganisationId>> organisations;
  private final Optional<Set<String>> regionNames;

  /**
   * @param organisations ids that the directory states; empty when it could not be read
   * @param regionNames regions that it states; empty when it could not be read whole
   */
  SettingsReader(Optional<Set<OrganisationId>> organisations, Optional<Set<String>> regionNames) {
    this.organisations = organisations;
    this.regionNames = regionNames;
  }

  Settings read(Fields fields) {
    String network = fields.text("network");
    ZoneId zone = fields.value("zone", Values::zone, ZoneOffset.UTC);
    Optional<MailSettings> mail = fields.map("mail", MailSettingsReader::read);
    boolean canSend = canSend(mail, fields);
    return new Settings(
        network,
        zone,
        fields
            .optionalValue("phone-region", SettingsReader::region)
            .orElse(Settings.UNKNOWN_REGION),
        fields.optionalValue("language", SettingsReader::language).orElse(Locale.ENGLISH),
        fields.choice("test-numbers", TestNumbers.REFUSED),
        fields.value("coordinator", this::coordinator, NOBODY),
        PeriodsReader.read(fields),
        regions(fields),
        fields.wholeNumber(
            "handover-window-days",
            Settings.DEFAULT_HANDOVER_WINDOW_DAYS,
            0,
            LONGEST_HANDOVER_WINDOW),
        fields.wholeNumber("list-cap", Settings.DEFAULT_LIST_CAP, 0, LARGEST_LIST_CAP),
        fields.wholeNumber(
            "answer-wait-days", Settings.DEFAULT_ANSWER_WAIT_DAYS, 1, LONGEST_ANSWER_WAIT),
        fields.wholeNumber("settle-seconds", Settings.DEFAULT_SETTLE_SECONDS, 0, LONGEST_SETTLING),
        fields.choice("unchanged-records", UnchangedRecords.RECOGNISED),
        fields.optionalText("matching"),
        new ScheduleReader(zone, canSend).read(fields),
        fields.map("schedule-store", StoreReader::read),
        fields.map("log", KafkaSettingsReader::log).flatMap(Function.identity()),
        fields.map("watch", new WatchReader(canSend)::read).orElse(WatchSettings.NONE),
        Set.copyOf(fields.list("case-workers", SettingsReader::account)),
        fields.map("retention", SettingsReader::retention).orElse(Retention.EVERYTHING),
        mail.orElse(MailSettings.DEFAULT));
  }

  /** Mail that is stated with a mistake is told of by itself. */
  private static boolean canSend(Optional<MailSettings> mail, Fields fields) {
    return mail.map(stated -> stated.server().isPresent()).orElseGet(() -> fields.has("mail"));
  }

  private Map<String, PeriodDays> regions(Fields fields) {
    Map<String, PeriodDays> regions = fields.mapOfMaps("regions", PeriodsReader::read);
    regionNames.ifPresent(
        known ->
            regions.keySet().stream()
                .filter(region -> !contains(known, region))
                .forEach(region -> refuse(region, known, fields)));
    return regions;
  }

  private static boolean contains(Set<String> known, String region) {
    return known.stream().map(NameSpelling::key).anyMatch(NameSpelling.key(region)::equals);
  }

  private static void refuse(String region, Set<String> known, Fields fields) {
    fields.problem(
        "regions",
        "Expected the region of an organisation in organisations.yaml, but found \"%s\""
            .formatted(region),
        Nearest.to(region, known)
            .map("did you mean \"%s\"?"::formatted)
            .orElse("give an organisation this region, or remove it"));
  }

  private OrganisationId coordinator(String text) {
    OrganisationId id = new OrganisationId(text);
    organisations.filter(ids -> !ids.contains(id)).ifPresent(ids -> refuse(id, ids));
    return id;
  }

  private static void refuse(OrganisationId id, Set<OrganisationId> ids) {
    List<String> names = ids.stream().map(OrganisationId::value).toList();
    throw new Refusal(
        "Expected the id of an organisation in organisations.yaml, but found \"%s\"".formatted(id),
        Nearest.to(id.value(), names)
            .map("did you mean \"%s\"?"::formatted)
            .orElse("add the organisation, or name another"));
  }

  private static String account(String text) {
    if (ACCOUNT.matcher(text).matches()) {
      return text;
    }
    throw new IllegalArgumentException(
        "Expected the name of an account of the system, but found other characters");
  }

  private static Retention retention(Fields fields) {
    Map<Kept, Integer> days = new EnumMap<>(Kept.class);
    for (Kept kept : Kept.values()) {
      fields
          .optionalValue(kept.key(), text -> Values.wholeNumber(text, 1, LONGEST_RETENTION))
          .ifPresent(number -> days.put(kept, number));
    }
    return new Retention(days);
  }

  static String region(String text) {
    if (text.equals(Settings.UNKNOWN_REGION) || REGIONS.contains(text)) {
      return text;
    }
    throw new IllegalArgumentException(
        "Expected a country of two capital letters such as PT or US, or ZZ for none, but found \"%s\""
            .formatted(text));
  }

  static Locale language(String text) {
    try {
      return new Locale.Builder().setLanguageTag(text).build();
    } catch (IllformedLocaleException noTag) {
      throw new IllegalArgumentException(
          "Expected a language such as en, en-GB or pt, but found \"%s\"".formatted(text), noTag);
    }
  }
}
