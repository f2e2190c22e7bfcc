import { catalogueFromFiles } from "@laminate/notebooks/records";

/** A small catalogue, invented. */
export const materials: Readonly<Record<string, string>> = {
  "fibres.csv":
    "name,kind,E1_GPa,E1_low_GPa,E1_high_GPa,E2_GPa,G12_GPa,nu12,G23_GPa,density_kg/m3," +
    "alpha1_1e-6/K,alpha2_1e-6/K,tensileStrength_MPa,compressiveStrength_MPa,source\n" +
    "glassy,glass,70,68,72,70,28,0.2,28,2500,5,5,1500,1000,invented\n",
  "resins.csv": "name,kind,E_GPa,nu,density_kg/m3,alpha_1e-6/K,beta,tensileStrength_MPa," +
    "compressiveStrength_MPa,shearStrength_MPa,hardenerPhr,source\n" +
    "sticky,epoxy,3,0.35,1150,60,0.3,60,90,40,30,invented\n",
  "reinforcements.csv": "name,form,weave,fibre,arealWeight_g/m2,warpShare,fibreFraction,source\n" +
    "weave 200,woven,plain,glassy,200,0.5,0.4,invented\n",
  "cores.csv":
    "name,kind,density_kg/m3,compressiveModulus_MPa,inPlaneModulusL_MPa,inPlaneModulusW_MPa,nu," +
    "shearModulusL_MPa,shearModulusW_MPa,compressiveStrength_MPa,shearStrengthL_MPa," +
    "shearStrengthW_MPa,alpha_1e-6/K,cellSize_mm,resinUptake_g/m2,source\n" +
    "foamy,foam,60,65,53,53,0.3,20,20,0.8,0.7,0.7,40,0,150,invented\n",
  "fillers.csv": "name,kind,particleDensity_kg/m3,bulkDensity_kg/m3,packing,E_GPa,nu,source\n" +
    "light,hollow sphere,150,90,0.6,1.2,0.2,invented\n",
};

/** The small catalogue, read. */
export const catalogue = catalogueFromFiles({ files: new Map(Object.entries(materials)) });

/** The tables of a small part, invented. */
export const tables: Readonly<Record<string, string>> = {
  "layup.csv": "layup,layer,material,resin,angle_deg,thickness_mm,note\n" +
    "sole,1,weave 200,sticky,0,,\n" +
    "sole,2,foamy,,90,10,\n" +
    "sole,3,weave 200,sticky,45,,bag side\n" +
    "tray,1,weave 200,sticky,0,,\n" +
    "tray,2,weave 200,sticky,0,,\n",
  "weighings.csv":
    "part,layup,process,date,length_mm,width_mm,length_u_mm,width_u_mm,core_mass_g,other_mass_g," +
    "part_mass_g,scale_u_g,thickness_mm,note\n" +
    "P1,sole,hand,2026-05-03,500,400,0.5,0.8,120,,310,0.5,,\n" +
    "P2,tray,bagged,2026-05-04,500,400,0.5,0.5,,15,160,0.5,0.7,\n",
  "load_tests.csv":
    "test,specimen,layup,loading,span_mm,width_mm,thickness_mm,load_N,deflection_mm,branch,note\n" +
    "T1,S1,sole,three-point,400,75,11,0,0,loading,\n" +
    "T2,S1,sole,quarter-point,600,75,11,0,0.01,loading,\n" +
    "T1,S1,sole,three-point,400,75,11,50,0.5,loading,slipped\n" +
    "T1,S1,sole,three-point,400,75,11,20,0.25,unloading,\n",
  "putty.csv":
    "batch,resin,filler,cup_volume_mL,cup_filler_mass_g,resin_mass_g,target_density_kg/m3\n" +
    "B1,sticky,light,250,22.5,100,700\nB2,sticky,light,250,23,80,\n",
  "fillets.csv": "corner,angle_deg,length_mm,radius_mm,radius_limit_mm\nbow,90,1200,10,15\n",
};

/** The tables with some replaced: by a text, by a change of the text, or taken out. */
export function folder(
  changes: Readonly<Record<string, string | undefined | ((text: string) => string)>> = {},
): ReadonlyMap<string, string> {
  const files = new Map(Object.entries(tables));
  for (const [file, change] of Object.entries(changes)) {
    const text = typeof change === "function" ? change(tables[file] ?? "") : change;
    if (text === undefined) files.delete(file);
    else files.set(file, text);
  }
  return files;
}
