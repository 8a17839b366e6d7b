package withers.workspace;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import withers.kafka.KafkaSettings;
import withers.organisation.Period;
import withers.organisation.PeriodDays;
import withers.schedule.ScheduledJob;
import withers.yaml.Choices;
import withers.yaml.Problems;
import withers.yaml.YamlFiles;
import withers.yaml.YamlMap;
import withers.yaml.YamlNode;
import withers.yaml.YamlText;

/**
 * Every setting of a workspace as it counts, stated or not, and where it comes from. Passwords
 * stand in files of their own: their names are told, and nothing that is in them.
 */
public final class EffectiveSettings {

  /**
   * A setting.
   *
   * @param key with those above it, joined by dots
   * @param value as the file would state it; empty for none
   * @param from where it is stated; empty for a default
   */
  public record Line(String key, String value, Optional<String> from) {}

  private final YamlMap file;
  private final List<Line> lines = new ArrayList<>();

  private EffectiveSettings(YamlMap file) {
    this.file = file;
  }

  /** All of them, in the order of the documentation. */
  public static List<Line> of(Workspace workspace) {
    YamlMap file =
        YamlFiles.read(workspace.paths().settings(), WorkspacePaths.SETTINGS, new Problems())
            .orElseThrow();
    return new EffectiveSettings(workspace.overrides().over(file)).all(workspace.settings());
  }

  private List<Line> all(Settings settings) {
    add("network", settings.network());
    add("zone", settings.zone());
    add("coordinator", settings.coordinator());
    add("phone-region", settings.phoneRegion());
    add("language", settings.language().toLanguageTag());
    for (Period period : Period.values()) {
      add(period.key(), settings.periods().days(period));
    }
    new TreeMap<>(settings.regions()).forEach(this::region);
    add("handover-window-days", settings.handoverWindowDays());
    add("list-cap", settings.listCap());
    add("answer-wait-days", settings.answerWaitDays());
    add("settle-seconds", settings.settleSeconds());
    add("unchanged-records", Choices.name(settings.unchangedRecords()));
    add("matching", settings.matching());
    add("test-numbers", Choices.name(settings.testNumbers()));
    settings.schedule().forEach(this::job);
    settings.scheduleStore().ifPresent(this::store);
    settings.kafka().ifPresent(this::kafka);
    watch(settings.watch());
    add("case-workers", caseWorkers(settings));
    for (Retention.Kept kept : Retention.Kept.values()) {
      add(List.of("retention", kept.key()), settings.retention().of(kept));
    }
    mail(settings.mail());
    return List.copyOf(lines);
  }

  /** Those alone that it states: the others are the workspace's. */
  private void region(String region, PeriodDays days) {
    new TreeMap<>(days.stated())
        .forEach((period, number) -> add(List.of("regions", region, period.key()), number));
  }

  private void job(ScheduledJob job) {
    add(List.of("schedule", job.name(), "cron"), job.times().cron());
    add(List.of("schedule", job.name(), "zone"), job.times().zone());
    add(
        List.of("schedule", job.name(), "actions"),
        job.actions().stream().map(Choices::name).collect(Collectors.joining(", ", "[", "]")));
  }

  private void store(StoreSettings store) {
    addOfStore("host", store.host());
    addOfStore("port", store.port());
    addOfStore("database", store.database());
    addOfStore("security", store.isEncrypted() ? "tls" : "none");
    addOfStore("user", store.login().map(MailServer.Login::user));
    addOfStore("password-file", store.login().map(MailServer.Login::passwordFile));
    addOfStore("certificates", store.certificates());
    addOfStore("lease-seconds", store.lease().toSeconds());
  }

  private void addOfStore(String key, Object value) {
    add(List.of("schedule-store", key), value);
  }

  private void kafka(KafkaSettings kafka) {
    addOfKafka("bootstrap-servers", kafka.bootstrapServers());
    addOfKafka("topic-prefix", kafka.topicPrefix());
    addOfKafka("replication", kafka.replication());
    addOfKafka("security", Choices.name(kafka.security()));
    addOfKafka("user", kafka.login().map(KafkaSettings.Login::user));
    addOfKafka("password-file", kafka.login().map(KafkaSettings.Login::passwordFile));
    addOfKafka("mechanism", kafka.login().map(login -> Choices.name(login.mechanism())));
    addOfKafka("certificates", kafka.certificates());
    addOfKafka("client-certificate", kafka.clientCertificate());
  }

  private void addOfKafka(String key, Object value) {
    add(List.of("log", "kafka", key), value);
  }

  private static Optional<String> caseWorkers(Settings settings) {
    return Optional.of(settings.caseWorkers())
        .filter(some -> !some.isEmpty())
        .map(some -> new TreeSet<>(some).toString());
  }

  private void watch(WatchSettings watch) {
    add(List.of("watch", "port"), watch.port());
    add(List.of("watch", "address"), watch.address());
    add(List.of("watch", "operator"), watch.operator());
  }

  private void mail(MailSettings mail) {
    add(List.of("mail", "reminder-days"), mail.reminderDays());
    add(List.of("mail", "details"), Choices.name(mail.details()));
    add(List.of("mail", "overview"), Choices.name(mail.overview()));
    add(List.of("mail", "largest-kib"), mail.largestKib());
    mail.server().ifPresent(this::server);
  }

  private void server(MailServer server) {
    add(List.of("mail", "server", "host"), server.host());
    add(List.of("mail", "server", "security"), Choices.name(server.security()));
    add(List.of("mail", "server", "port"), server.port());
    add(List.of("mail", "server", "user"), server.login().map(MailServer.Login::user));
    add(
        List.of("mail", "server", "password-file"),
        server.login().map(MailServer.Login::passwordFile));
    add(List.of("mail", "server", "certificates"), server.certificates());
  }

  private void add(String key, Object value) {
    add(List.of(key), value);
  }

  private void add(List<String> keys, Object value) {
    Object shown = value instanceof Optional<?> optional ? optional.orElse(null) : value;
    lines.add(new Line(String.join(".", keys), shown == null ? "" : shown.toString(), place(keys)));
  }

  private Optional<String> place(List<String> keys) {
    YamlNode node = file;
    for (String key : keys) {
      Optional<YamlNode> next = node instanceof YamlMap map ? map.get(key) : Optional.empty();
      if (next.isEmpty()) {
        return Optional.empty();
      }
      node = next.get();
    }
    return Optional.of(node).filter(EffectiveSettings::says).map(one -> one.place().toString());
  }

  private static boolean says(YamlNode node) {
    return !(node instanceof YamlText text && text.isEmpty());
  }
}
