package org.castwright.house;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** What people touch sits on top: nothing below knows of it, and one class names the kernel. */
@AnalyzeClasses(packages = "org.castwright", importOptions = AppDirectionTest.ProductOnly.class)
class AppDirectionTest {

  /** Leaves out tests, also those that arrive as a jar. */
  static final class ProductOnly implements ImportOption {
    @Override
    public boolean includes(Location location) {
      return !location.contains("-tests.jar") && !location.contains("/test-classes/");
    }
  }

  @ArchTest
  static final ArchRule nobodyBelowKnowsTheApp =
      noClasses()
          .that()
          .resideOutsideOfPackages(
              "..castwright.cli..",
              "..castwright.web..",
              "..castwright.sheet..",
              "..castwright.pictures..",
              "..castwright.demo..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "..castwright.cli..",
              "..castwright.web..",
              "..castwright.sheet..",
              "..castwright.pictures..",
              "..castwright.demo..");

  @ArchTest
  static final ArchRule theBenchKnowsNoCommands =
      noClasses()
          .that()
          .resideInAnyPackage(
              "..castwright.web..",
              "..castwright.sheet..",
              "..castwright.pictures..",
              "..castwright.demo..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("..castwright.cli..");

  @ArchTest
  static final ArchRule onlyTheBenchAndItsCommandSpeakHttp =
      noClasses()
          .that()
          .resideOutsideOfPackage("..castwright.web..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("com.sun.net.httpserver..", "java.net.http..");

  @ArchTest
  static final ArchRule theSheetIsMadeFromResultsOnly =
      noClasses()
          .that()
          .resideInAPackage("..castwright.sheet..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "..castwright.cli..",
              "..castwright.demo..",
              "..castwright.survey..",
              "..castwright.cover..",
              "..castwright.parting..",
              "..castwright.plan..",
              "..castwright.mold..",
              "..castwright.proof..");

  @ArchTest
  static final ArchRule onlyTheSheetSpeaksPdf =
      noClasses()
          .that()
          .resideOutsideOfPackage("..castwright.sheet..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.apache.pdfbox..");

  @ArchTest
  static final ArchRule picturesDrawMeshesOnly =
      noClasses()
          .that()
          .resideInAPackage("..castwright.pictures..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "..castwright.cli..",
              "..castwright.sheet..",
              "..castwright.demo..",
              "..castwright.survey..",
              "..castwright.cover..",
              "..castwright.parting..",
              "..castwright.plan..",
              "..castwright.mold..",
              "..castwright.proof..",
              "..castwright.pipeline..");

  @ArchTest
  static final ArchRule demoModelsAreMeshesOnly =
      classes()
          .that()
          .resideInAPackage("..castwright.demo..")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "java..", "..castwright.demo..", "..castwright.mesh..", "..castwright.geom..");

  @ArchTest
  static final ArchRule oneClassNamesTheKernel =
      noClasses()
          .that()
          .resideOutsideOfPackage("..solid.manifold..")
          .and()
          .doNotHaveFullyQualifiedName("org.castwright.cli.Kernels")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("..solid.manifold..");

  @ArchTest
  static final ArchRule onlyCommandsSpeakPicocli =
      noClasses()
          .that()
          .resideOutsideOfPackage("..castwright.cli..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("picocli..");

  @ArchTest
  static final ArchRule noCycles =
      slices().matching("org.castwright.(*)..").should().beFreeOfCycles();
}
