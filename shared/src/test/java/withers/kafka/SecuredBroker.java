package withers.kafka;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.common.acl.AccessControlEntry;
import org.apache.kafka.common.acl.AclBinding;
import org.apache.kafka.common.acl.AclBindingFilter;
import org.apache.kafka.common.acl.AclOperation;
import org.apache.kafka.common.acl.AclPermissionType;
import org.apache.kafka.common.resource.PatternType;
import org.apache.kafka.common.resource.ResourcePattern;
import org.apache.kafka.common.resource.ResourceType;
import withers.kafka.KafkaSettings.Login;
import withers.kafka.KafkaSettings.Mechanism;
import withers.kafka.KafkaSettings.Security;
import withers.kafka.broker.BrokerPlan;
import withers.kafka.broker.LocalBroker;

/** A broker that speaks TLS only, asks for a password, and allows nothing that wasn't granted. */
public final class SecuredBroker implements AutoCloseable {
  private static final String ADMIN = "admin";

  private final Path folder;
  private final LocalBroker process;

  private SecuredBroker(Path folder, LocalBroker process) {
    this.folder = folder;
    this.process = process;
  }

  /**
   * Starts one, and waits until it answers.
   *
   * @param users who may sign in, each with the password {@code NAME-secret}
   */
  public static SecuredBroker start(Path folder, String... users)
      throws IOException, InterruptedException {
    new Certificates(folder).make("broker");
    List<String> formatting = new ArrayList<>();
    for (String user : List.of(users)) {
      add(formatting, user);
    }
    add(formatting, ADMIN);
    BrokerPlan open = BrokerPlan.alone(folder.resolve("broker"), TestJars.all());
    return new SecuredBroker(
        folder,
        LocalBroker.start(open.with(properties(folder), formatting), administrator(folder)));
  }

  private static void add(List<String> formatting, String user) {
    formatting.add("--add-scram");
    formatting.add("SCRAM-SHA-512=[name=%s,password=%s]".formatted(user, password(user)));
  }

  static String password(String user) {
    return user + "-secret";
  }

  private static Map<String, String> properties(Path folder) {
    Map<String, String> all = new HashMap<>();
    String addresses = "SASL_SSL://127.0.0.1:{port},CONTROLLER://127.0.0.1:{controller}";
    all.put("listeners", addresses);
    all.put("advertised.listeners", addresses);
    all.put("listener.security.protocol.map", "SASL_SSL:SASL_SSL,CONTROLLER:PLAINTEXT");
    all.put("inter.broker.listener.name", "SASL_SSL");
    all.put("sasl.enabled.mechanisms", "SCRAM-SHA-512");
    all.put("sasl.mechanism.inter.broker.protocol", "SCRAM-SHA-512");
    all.put("listener.name.sasl_ssl.scram-sha-512.sasl.jaas.config", jaas());
    all.put("ssl.keystore.type", "PKCS12");
    all.put("ssl.keystore.location", folder.resolve("broker.p12").toString());
    all.put("ssl.keystore.password", Certificates.STORE_PASSWORD);
    all.put("ssl.truststore.type", "PEM");
    all.put("ssl.truststore.location", folder.resolve("broker.pem").toString());
    all.put("authorizer.class.name", "org.apache.kafka.metadata.authorizer.StandardAuthorizer");
    all.put("super.users", "User:admin;User:ANONYMOUS"); // the controller's own listener
    return all;
  }

  private static String jaas() {
    return "org.apache.kafka.common.security.scram.ScramLoginModule required username=\"%s\" password=\"%s\";"
        .formatted(ADMIN, password(ADMIN));
  }

  private static Map<String, Object> administrator(Path folder) {
    return Map.of(
        "security.protocol", "SASL_SSL",
        "sasl.mechanism", "SCRAM-SHA-512",
        "sasl.jaas.config", jaas(),
        "ssl.truststore.type", "PEM",
        "ssl.truststore.location", folder.resolve("broker.pem").toString());
  }

  public KafkaCluster cluster(String prefix, String user) {
    return cluster(prefix, user, password(user), Optional.of("broker.pem"));
  }

  /** The cluster as a user's program sees it. */
  public KafkaCluster cluster(
      String prefix, String user, String password, Optional<String> certificates) {
    KafkaSettings settings =
        new KafkaSettings(
            List.of(process.address()),
            prefix,
            Optional.of(1),
            Security.TLS,
            Optional.of(new Login(user, "password", Mechanism.SCRAM_SHA_512)),
            certificates,
            Optional.empty());
    return new KafkaCluster(settings, folder, file -> password, Duration.ofSeconds(20));
  }

  public String address() {
    return process.address();
  }

  /** Allows a user some operations on whatever of a kind begins with a prefix. */
  public void grant(String user, ResourceType type, String prefix, AclOperation... operations)
      throws Exception {
    ResourcePattern pattern = new ResourcePattern(type, prefix, PatternType.PREFIXED);
    List<AclBinding> bindings = new ArrayList<>();
    for (AclOperation operation : operations) {
      bindings.add(
          new AclBinding(
              pattern,
              new AccessControlEntry("User:" + user, "*", operation, AclPermissionType.ALLOW)));
    }
    try (Admin admin = process.admin()) {
      admin.createAcls(bindings).all().get(30, TimeUnit.SECONDS);
      while (!admin.describeAcls(AclBindingFilter.ANY).values().get().containsAll(bindings)) {
        Thread.onSpinWait();
      }
    }
  }

  /** Whether there is a topic of this name. */
  public boolean has(String topic) throws Exception {
    try (Admin admin = process.admin()) {
      return admin.listTopics().names().get(30, TimeUnit.SECONDS).contains(topic);
    }
  }

  @Override
  public void close() {
    process.close();
  }
}
