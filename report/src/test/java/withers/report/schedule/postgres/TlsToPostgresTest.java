package withers.report.schedule.postgres;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.io.TempDir;
import withers.report.mail.smtp.Certificate;

/**
 * The way to a PostgreSQL server whose certificate nobody but this test vouches for. That it is
 * encrypted, the server itself says (its view {@code pg_stat_ssl}).
 */
@Tag("postgres")
@EnabledIf(
    value = "withers.report.schedule.postgres.PostgresServer#isHere",
    disabledReason = "no PostgreSQL here: apt-get install postgresql")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TlsToPostgresTest {
  @TempDir private static Path folder;
  private static PostgresServer server;
  private static Certificate certificate;
  private static Certificate another;

  @BeforeAll
  static void start() throws Exception {
    certificate = Certificate.of("localhost", folder);
    another = Certificate.of("jobs.example.org", folder);
    server = PostgresServer.startWith(certificate);
  }

  @AfterAll
  static void stop() throws IOException {
    server.close();
  }

  private static void assertRefused(PostgresServer server, Optional<Path> trusted, String words) {
    assertThatThrownBy(() -> server.encryptedDatabase(trusted))
        .isInstanceOf(StoreUnavailableException.class)
        .hasMessage(words.formatted(server.port()));
  }

  @Test
  void with_a_certificate_that_is_trusted_and_for_that_name_it_is_encrypted() {
    JobDatabase database = server.encryptedDatabase(Optional.of(certificate.pem()));

    assertThat(isEncrypted(database)).isTrue();
    assertThat(isEncrypted(server.database(database.lease()))).isFalse();
    assertThat(new Claims(database, "a").take("encrypted", "{}")).isPresent();
  }

  private static boolean isEncrypted(JobDatabase database) {
    return database.transaction(
        connection -> {
          try (Statement statement = connection.createStatement();
              ResultSet row =
                  statement.executeQuery(
                      "SELECT ssl FROM pg_stat_ssl WHERE pid = pg_backend_pid()")) {
            return row.next() && row.getBoolean(1);
          }
        });
  }

  @Test
  void a_certificate_that_another_authority_would_have_to_vouch_for_is_refused() {
    assertRefused(
        server,
        Optional.of(another.pem()),
        "The schedule's database postgres at localhost, port %d, can't be used: nothing in the file of certificates vouches for the server's; see that it holds the one of its authority, or its own");
  }

  @Test
  void so_is_one_that_Java_does_not_know() {
    assertRefused(
        server,
        Optional.empty(),
        "The schedule's database postgres at localhost, port %d, can't be used: no authority that Java knows vouches for the server's certificate; name a file with the one of its authority, or its own, as certificates under schedule-store");
  }

  @Test
  void so_is_a_trusted_one_of_another_server() throws IOException {
    try (PostgresServer other = PostgresServer.startWith(another)) {
      assertRefused(
          other,
          Optional.of(another.pem()),
          "The schedule's database postgres at localhost, port %d, can't be used: its certificate is for another name; host under schedule-store has to be a name that stands in the certificate");
    }
  }

  @Test
  void a_server_without_TLS_is_told_nothing() throws IOException {
    try (PostgresServer plain = PostgresServer.start()) {
      assertRefused(
          plain,
          Optional.of(certificate.pem()),
          "The schedule's database postgres at localhost, port %d, can't be used: it offers no TLS; have it do so, or say security: none under schedule-store for a server on this machine");
    }
  }

  @Test
  void a_file_that_is_missing_or_holds_no_certificate_is_named() throws IOException {
    Path missing = folder.resolve("missing.pem");
    Path letter = Files.writeString(folder.resolve("letter.pem"), "Dear reader\n");

    for (Path file : new Path[] {missing, letter}) {
      assertRefused(
          server,
          Optional.of(file),
          "The schedule's database postgres at localhost, port %d, can't be used: expected a PEM file of certificates, but found none in "
              + file
              + "; see certificates under schedule-store");
    }
  }
}
