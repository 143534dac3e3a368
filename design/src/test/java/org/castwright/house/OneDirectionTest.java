package org.castwright.house;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Data flows one way; this holds the order of the rooms. */
@AnalyzeClasses(packages = "org.castwright", importOptions = OneDirectionTest.ProductOnly.class)
class OneDirectionTest {

  /** Leaves out tests, those in the kernel's test jar too. */
  static final class ProductOnly implements ImportOption {
    @Override
    public boolean includes(Location location) {
      return !location.contains("/test-classes/") && !location.contains("-tests.jar");
    }
  }

  @ArchTest
  static final ArchRule rooms =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("geom")
          .definedBy("..castwright.geom")
          .layer("progress")
          .definedBy("..castwright.progress")
          .layer("mesh")
          .definedBy("..castwright.mesh")
          .layer("meshio")
          .definedBy("..castwright.meshio")
          .layer("solid")
          .definedBy("..castwright.solid")
          .layer("repair")
          .definedBy("..castwright.repair")
          .layer("material")
          .definedBy("..castwright.material")
          .layer("survey")
          .definedBy("..castwright.survey")
          .layer("stretch")
          .definedBy("..castwright.stretch")
          .layer("heat")
          .definedBy("..castwright.heat")
          .layer("seams")
          .definedBy("..castwright.seams")
          .layer("cover")
          .definedBy("..castwright.cover")
          .layer("division")
          .definedBy("..castwright.division")
          .layer("parting")
          .definedBy("..castwright.parting")
          .layer("blocking")
          .definedBy("..castwright.blocking")
          .layer("side")
          .definedBy("..castwright.side")
          .layer("plan")
          .definedBy("..castwright.plan")
          .layer("mold")
          .definedBy("..castwright.mold")
          .layer("proof")
          .definedBy("..castwright.proof")
          .layer("fill")
          .definedBy("..castwright.fill")
          .layer("pour")
          .definedBy("..castwright.pour")
          .layer("size")
          .definedBy("..castwright.size")
          .layer("batch")
          .definedBy("..castwright.batch")
          .layer("advice")
          .definedBy("..castwright.advice")
          .layer("trial")
          .definedBy("..castwright.trial")
          .layer("coupon")
          .definedBy("..castwright.coupon")
          .layer("pipeline")
          .definedBy("..castwright.pipeline")
          .whereLayer("geom")
          .mayNotAccessAnyLayer()
          .whereLayer("progress")
          .mayNotAccessAnyLayer()
          .whereLayer("mesh")
          .mayOnlyAccessLayers("geom", "progress")
          .whereLayer("meshio")
          .mayOnlyAccessLayers("geom", "progress", "mesh")
          .whereLayer("solid")
          .mayOnlyAccessLayers("geom", "progress", "mesh")
          .whereLayer("repair")
          .mayOnlyAccessLayers("geom", "progress", "mesh", "solid")
          .whereLayer("material")
          .mayNotAccessAnyLayer()
          .whereLayer("survey")
          .mayOnlyAccessLayers("geom", "progress", "mesh")
          .whereLayer("stretch")
          .mayOnlyAccessLayers("geom", "progress", "mesh", "material")
          .whereLayer("heat")
          .mayOnlyAccessLayers("geom", "progress", "mesh", "survey")
          .whereLayer("seams")
          .mayOnlyAccessLayers("geom", "progress", "mesh", "survey")
          .whereLayer("cover")
          .mayOnlyAccessLayers("geom", "progress", "mesh", "survey")
          .whereLayer("division")
          .mayOnlyAccessLayers("geom", "progress", "mesh", "solid", "survey", "seams")
          .whereLayer("parting")
          .mayOnlyAccessLayers("geom", "progress", "mesh", "solid")
          .whereLayer("side")
          .mayOnlyAccessLayers("geom", "progress", "mesh", "solid", "survey", "parting")
          .whereLayer("blocking")
          .mayOnlyAccessLayers("geom", "progress", "mesh", "solid", "repair", "survey")
          .whereLayer("plan")
          .mayOnlyAccessLayers(
              "geom",
              "progress",
              "mesh",
              "solid",
              "material",
              "survey",
              "stretch",
              "seams",
              "cover",
              "division",
              "parting",
              "side",
              "pour")
          .whereLayer("mold")
          .mayOnlyAccessLayers(
              "geom", "progress", "mesh", "solid", "repair", "division", "parting", "side", "plan")
          .whereLayer("fill")
          .mayOnlyAccessLayers("geom", "progress", "mesh")
          .whereLayer("pour")
          .mayOnlyAccessLayers("geom", "mesh")
          .whereLayer("size")
          .mayNotAccessAnyLayer()
          .whereLayer("batch")
          .mayNotAccessAnyLayer()
          .whereLayer("advice")
          .mayOnlyAccessLayers(
              "geom", "progress", "mesh", "material", "heat", "fill", "pour", "size", "batch")
          .whereLayer("trial")
          .mayOnlyAccessLayers("size")
          .whereLayer("coupon")
          .mayOnlyAccessLayers("geom", "mesh", "solid", "plan", "mold")
          .whereLayer("proof")
          .mayOnlyAccessLayers("geom", "progress", "mesh", "solid", "repair", "fill")
          .whereLayer("pipeline")
          .mayNotBeAccessedByAnyLayer();

  @ArchTest
  static final ArchRule noCycles =
      slices().matching("org.castwright.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule theKernelStaysPure =
      classes()
          .that()
          .resideInAnyPackage(
              "..castwright.geom",
              "..castwright.mesh",
              "..castwright.meshio",
              "..castwright.repair",
              "..castwright.solid",
              "..castwright.progress")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("java..", "javax.xml..", "org.xml.sax..", "org.castwright..");

  @ArchTest
  static final ArchRule nobodyNamesAKernel =
      noClasses()
          .that()
          .resideOutsideOfPackage("..solid.manifold..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("..solid.manifold..");
}
