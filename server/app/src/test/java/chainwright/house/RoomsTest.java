package chainwright.house;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.equivalentTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import chainwright.app.Main;
import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Random;

/** Which room may know which. An exception stands here by name, with its reason. */
@AnalyzeClasses(packages = "chainwright", importOptions = ImportOption.DoNotIncludeTests.class)
final class RoomsTest {

  /** Reads the catalogue's YAML while the project is built; it is not shipped. */
  private static final String CATALOGUE_COMPILER = "chainwright.notation.catalogue.yaml..";

  private static final String[] CORE = {
    "chainwright.quantity..", "chainwright.dsp..", "chainwright.notation..", "chainwright.engine.."
  };

  @ArchTest
  static final ArchRule QUANTITY_KNOWS_NOTHING =
      classes()
          .that()
          .resideInAPackage("chainwright.quantity..")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("chainwright.quantity..", "java..", "org.jspecify..");

  @ArchTest
  static final ArchRule DSP_KNOWS_NO_NOTATION =
      noClasses()
          .that()
          .resideInAPackage("chainwright.dsp..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("chainwright.notation..", "chainwright.engine..", "chainwright.app..")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule NOTATION_KNOWS_NO_SOUND =
      noClasses()
          .that()
          .resideInAPackage("chainwright.notation..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("chainwright.dsp..", "chainwright.engine..", "chainwright.app..");

  @ArchTest
  static final ArchRule SYNTAX_KNOWS_NO_VOCABULARY =
      noClasses()
          .that()
          .resideInAnyPackage("chainwright.notation.syntax..", "chainwright.notation.text..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "chainwright.notation.catalogue..",
              "chainwright.notation.model..",
              "chainwright.notation.lowering..",
              "chainwright.notation.project..");

  @ArchTest
  static final ArchRule ENGINE_KNOWS_NO_EDITOR =
      noClasses()
          .that()
          .resideInAPackage("chainwright.engine..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("chainwright.app..")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule RULES_READ_NO_TOKENS =
      noClasses()
          .that()
          .resideInAPackage("chainwright.engine.rules..")
          .should()
          .dependOnClassesThat(
              resideInAPackage("chainwright.notation.syntax..")
                  .and(not(DescribedPredicate.describe("Section", RoomsTest::isSection))))
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule CORE_TOUCHES_NO_WORLD =
      noClasses()
          .that(resideInAnyPackage(CORE).and(not(resideInAPackage(CATALOGUE_COMPILER))))
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.nio.file..", "java.net..", "java.util.logging..", "javax..")
          .orShould()
          .dependOnClassesThat(
              DescribedPredicate.describe(
                  "read a file or a clock, or start a thread", RoomsTest::isWorld));

  @ArchTest
  static final ArchRule CORE_READS_NO_CLOCK_AND_PRINTS_NOTHING =
      noClasses()
          .that(resideInAnyPackage(CORE).and(not(resideInAPackage(CATALOGUE_COMPILER))))
          .should()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(Math.class, "random")
          .orShould()
          .callConstructor(Random.class)
          .orShould()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err");

  @ArchTest
  static final ArchRule ASSIST_SPEAKS_NO_PROTOCOL =
      noClasses()
          .that(not(resideInAPackage("chainwright.app.lsp..")))
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.eclipse.lsp4j..");

  @ArchTest
  static final ArchRule LSP_AND_CLI_ARE_IMPORTED_BY_THE_START_ALONE =
      noClasses()
          .that(
              not(resideInAnyPackage("chainwright.app.lsp..", "chainwright.app.cli.."))
                  .and(not(equivalentTo(Main.class))))
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("chainwright.app.lsp..", "chainwright.app.cli..");

  @ArchTest
  static final ArchRule LSP_AND_CLI_DO_NOT_KNOW_EACH_OTHER =
      slices().matching("chainwright.app.(lsp|cli)..").should().notDependOnEachOther();

  @ArchTest
  static final ArchRule ONLY_CLI_PRINTS_AND_EXITS =
      noClasses()
          .that(
              not(resideInAnyPackage("chainwright.app.cli..", CATALOGUE_COMPILER))
                  // The start hands the streams over and ends the process with the run's exit code.
                  .and(not(equivalentTo(Main.class))))
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .orShould()
          .callMethod(System.class, "exit", int.class);

  @ArchTest
  static final ArchRule PACKAGES_FORM_NO_CYCLE =
      slices().matching("chainwright.(**)").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule RECORDS_HOLD_NO_ARRAYS =
      fields()
          .that()
          .areDeclaredInClassesThat()
          .areAssignableTo(Record.class)
          .and()
          .areNotStatic()
          .should(HouseConditions.notHoldAnArray());

  @ArchTest
  static final ArchRule VALUES_ARE_FINAL =
      fields()
          .that()
          .areDeclaredInClassesThat(
              resideInAnyPackage(
                      "chainwright.quantity..",
                      "chainwright.notation.text..",
                      "chainwright.notation.diagnostic..",
                      "chainwright.notation.syntax..",
                      "chainwright.notation.catalogue..",
                      "chainwright.notation.model..",
                      "chainwright.notation.project..")
                  .and(DescribedPredicate.describe("are public", RoomsTest::isPublic)))
          .should()
          .beFinal();

  private static boolean isPublic(JavaClass type) {
    return type.getModifiers().contains(JavaModifier.PUBLIC);
  }

  /** A finding's place names its section, which is no token. */
  private static boolean isSection(JavaClass type) {
    return type.getSimpleName().equals("Section");
  }

  private static boolean isWorld(JavaClass type) {
    String name = type.getName();
    return name.equals("java.lang.Thread")
        || name.equals("java.time.Clock")
        || name.equals("java.time.Instant")
        || name.equals("java.io.File")
        || name.startsWith("java.io.FileInput")
        || name.startsWith("java.io.FileOutput")
        || name.equals("java.io.RandomAccessFile")
        || name.equals("java.util.concurrent.Executors")
        || name.equals("java.util.concurrent.ForkJoinPool")
        || name.equals("java.util.concurrent.ThreadLocalRandom");
  }
}
