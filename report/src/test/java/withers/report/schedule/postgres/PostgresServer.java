package withers.report.schedule.postgres;

import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import withers.report.mail.smtp.Certificate;
import withers.workspace.FolderTree;
import withers.workspace.MailServer.Login;
import withers.workspace.StoreSettings;

/**
 * A PostgreSQL server of its own, from the binaries of this machine (Debian's package {@code
 * postgresql}), on a free port. Where there are none, {@link #isHere} says so; with the environment
 * variable {@value #REQUIRED} set, as in CI, starting it fails instead.
 */
public final class PostgresServer implements AutoCloseable {
  static final String REQUIRED = "WITHERS_POSTGRES_REQUIRED";

  private static final Path DEBIAN_S = Path.of("/usr/lib/postgresql");
  private static final String USER = "withers";
  private static final String PASSWORD = "five words nobody guesses";

  private final Path folder;
  private final Path binaries;
  private final int port;

  private PostgresServer(Path folder, Path binaries, int port) {
    this.folder = folder;
    this.binaries = binaries;
    this.port = port;
  }

  /** Whether a server can be started, or has to be. */
  public static boolean isHere() {
    return System.getenv(REQUIRED) != null || binaries().isPresent();
  }

  private static Optional<Path> binaries() {
    if (!Files.isDirectory(DEBIAN_S)) {
      return Optional.empty();
    }
    try (Stream<Path> versions = Files.list(DEBIAN_S)) {
      return versions
          .map(version -> version.resolve("bin"))
          .filter(bin -> Files.isExecutable(bin.resolve("initdb")))
          .findFirst();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** Starts a server with an empty database. */
  public static PostgresServer start() throws IOException {
    return start(folder -> "");
  }

  /** Starts one that also speaks TLS, with this certificate. */
  static PostgresServer startWith(Certificate certificate) throws IOException {
    return start(folder -> tls(folder, certificate));
  }

  private static String tls(Path folder, Certificate certificate) throws Exception {
    Path key = Files.writeString(folder.resolve("server.key"), certificate.keyInPem());
    Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-------"));
    Path pem = Files.copy(certificate.pem(), folder.resolve("server.pem"));
    if (isRoot()) {
      own(key);
      own(pem);
    }
    return " -c ssl=on -c ssl_key_file=%s -c ssl_cert_file=%s".formatted(key, pem);
  }

  /** What a server is started with, and the files that it needs for that. */
  private interface Options {
    String in(Path folder) throws Exception;
  }

  private static PostgresServer start(Options options) throws IOException {
    Path binaries =
        binaries()
            .orElseThrow(
                () -> new IllegalStateException("No PostgreSQL: apt-get install postgresql"));
    Path folder = Files.createTempDirectory("postgres");
    PostgresServer server = new PostgresServer(folder, binaries, freePort());
    server.make(options);
    return server;
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0)) {
      return free.getLocalPort();
    }
  }

  private void make(Options options) throws IOException {
    Path password = Files.writeString(folder.resolve("password"), PASSWORD + "\n");
    if (isRoot()) { // PostgreSQL refuses to run as root
      own(folder);
      own(password);
    }
    run(
        "initdb",
        "--pgdata=" + folder.resolve("data"),
        "--username=" + USER,
        "--auth=scram-sha-256",
        "--pwfile=" + password,
        "--no-sync",
        "--encoding=UTF8",
        "--locale=C");
    run(
        "pg_ctl",
        "--pgdata=" + folder.resolve("data"),
        "--wait",
        "--log=" + folder.resolve("log"),
        "--options=-p %d -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c fsync=off%s"
            .formatted(port, more(options)),
        "start");
  }

  private String more(Options options) throws IOException {
    try {
      return options.in(folder);
    } catch (Exception e) {
      throw new IOException(e);
    }
  }

  private static void own(Path path) throws IOException {
    Files.setOwner(
        path,
        path.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName("postgres"));
  }

  private static boolean isRoot() {
    return "root".equals(System.getProperty("user.name"));
  }

  private void run(String program, String... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    if (isRoot()) {
      command.addAll(List.of("runuser", "-u", "postgres", "--"));
    }
    command.add(binaries.resolve(program).toString());
    command.addAll(List.of(arguments));
    Process process =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      if (!process.waitFor(1, TimeUnit.MINUTES) || process.exitValue() != 0) {
        throw new IllegalStateException("PostgreSQL's %s doesn't do its work".formatted(program));
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** How a workspace states it, its password in a file of the workspace. */
  public String settings(Path workspace, int leaseSeconds) throws IOException {
    passwordFile(workspace);
    return "schedule-store: {host: 127.0.0.1, port: %d, database: postgres, user: %s, password-file: jobs.password, security: none, lease-seconds: %d}\n"
        .formatted(port, USER, leaseSeconds);
  }

  private static void passwordFile(Path workspace) throws IOException {
    Path file = Files.writeString(workspace.resolve("jobs.password"), PASSWORD + "\n");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
  }

  /** Its database, opened. */
  JobDatabase database(Duration lease) {
    return database("127.0.0.1", false, Optional.empty(), lease);
  }

  /** The same by an encrypted connection, to a server named localhost. */
  JobDatabase encryptedDatabase(Optional<Path> trusted) {
    return database("localhost", true, trusted.map(Path::toString), Duration.ofSeconds(2));
  }

  private JobDatabase database(
      String host, boolean isEncrypted, Optional<String> trusted, Duration lease) {
    return JobDatabase.open(
        new StoreSettings(
            host,
            port,
            "postgres",
            Optional.of(new Login(USER, "jobs.password")),
            isEncrypted,
            trusted,
            lease),
        folder,
        file -> PASSWORD);
  }

  /** Who has a job, or had it last, as an operator reads it there. */
  public String owner(String job) {
    return database(Duration.ofSeconds(2))
        .transaction(
            connection -> {
              try (PreparedStatement select =
                  connection.prepareStatement("SELECT owner FROM withers_job WHERE job = ?")) {
                select.setString(1, job);
                try (ResultSet row = select.executeQuery()) {
                  return row.next() ? row.getString(1) : "nobody";
                }
              }
            });
  }

  int port() {
    return port;
  }

  @Override
  public void close() throws IOException {
    run("pg_ctl", "--pgdata=" + folder.resolve("data"), "--mode=immediate", "stop");
    FolderTree.delete(folder);
  }
}
