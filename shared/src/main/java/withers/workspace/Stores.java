package withers.workspace;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Optional;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.VaultKey;
import withers.contact.VaultKeyFile;
import withers.contact.sqlite.SqliteContactVault;
import withers.kafka.KafkaCluster;
import withers.kafka.KafkaSettings;
import withers.log.EventLog;
import withers.log.kafka.KafkaEventLog;
import withers.log.sqlite.ChipFilters;
import withers.log.sqlite.SqliteEventLog;
import withers.sqlite.Upgrading;

/** Opens what a workspace keeps for good. */
final class Stores {
  private static final int FIRST_KEY = 1;

  private final WorkspacePaths paths;
  private final Optional<KafkaSettings> kafka;
  private final Upgrading upgrading;

  /**
   * @param kafka where the event log is on Apache Kafka; empty for the embedded log
   * @param upgrading what stands around bringing up files that an older program wrote
   */
  Stores(WorkspacePaths paths, Optional<KafkaSettings> kafka, Upgrading upgrading) {
    this.paths = paths;
    this.kafka = kafka;
    this.upgrading = upgrading;
  }

  EventLog log() {
    return kafka.map(this::kafkaLog).orElseGet(this::embeddedLog);
  }

  private EventLog embeddedLog() {
    folder();
    return SqliteEventLog.open(
        paths.eventLog(), upgrading, ChipFilters.in(paths.chipFilters(), OwnerOnly::openAnew));
  }

  private EventLog kafkaLog(KafkaSettings settings) {
    return KafkaEventLog.open(cluster(settings));
  }

  /** The cluster that the log is on; empty for the embedded log. */
  Optional<KafkaCluster> cluster() {
    return kafka.map(this::cluster);
  }

  private KafkaCluster cluster(KafkaSettings settings) {
    return new KafkaCluster(settings, paths.root(), PasswordFile::read);
  }

  /** The log, if it may hold imports; else nothing is made. */
  Optional<EventLog> filledLog() {
    if (kafka.isEmpty()) {
      return Files.exists(paths.eventLog()) ? Optional.of(log()) : Optional.empty();
    }
    EventLog log = log();
    try {
      if (!log.snapshot().markers().isEmpty()) {
        return Optional.of(log);
      }
    } catch (RuntimeException failed) {
      log.close();
      throw failed;
    }
    log.close();
    return Optional.empty();
  }

  ContactVault vault() {
    folder();
    makeFirstKey();
    return SqliteContactVault.open(
        paths.contactVault(), VaultKeyFile.load(paths.vaultKey()), this::forget, upgrading);
  }

  /** Nothing that was told of contacts outlives them. */
  private void forget(Collection<ContactRef> references) {
    try {
      Files.deleteIfExists(paths.answers());
      Files.deleteIfExists(paths.clearAnimals());
      for (Path former : paths.formerForms()) {
        Files.deleteIfExists(former);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Makes the vault's key when nothing that needs an older one is there. */
  void makeFirstKey() {
    if (!Files.exists(paths.vaultKey()) && nothingRefersToAKey()) {
      VaultKeyFile.create(paths.vaultKey(), VaultKey.random(FIRST_KEY));
    }
  }

  /**
   * A second key beside contacts or events made with a first one would part every person in two.
   */
  private boolean nothingRefersToAKey() {
    return !Files.exists(paths.contactVault()) && isLogEmpty();
  }

  private boolean isLogEmpty() {
    Optional<EventLog> filled = filledLog();
    if (filled.isEmpty()) {
      return true;
    }
    try (EventLog log = filled.get()) {
      return log.snapshot().markers().isEmpty();
    }
  }

  private void folder() {
    try {
      OwnerOnly.folder(paths.log());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
