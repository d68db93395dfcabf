/** Where numbers come from, as they are cited to a user. */
export const sourceWords = {
  'source.spray-2000':
    'Spray JR et al. Ann Periodontol 2000;5:119–28; Grunder U et al. IJPRD 2005;25:113–9. A review could not verify any threshold (Albeshri 2021)',
  'source.ours': 'a proposal of this project; a perforation is the only fact',
  'source.ours-margin':
    'margin of this project for the spread of a hand; 2 mm is the published margin for guides, not an anatomical limit (Tahmaseb 2018)',
  'source.ours-incisal-edge': 'convention for cemented crowns; the numbers are a proposal of this project',
  'source.no-evidence-palatal':
    'no study addresses the palatal wall (Albeshri 2021); a proposal of this project',
  'source.buser-2004': 'Buser D et al. IJOMI 2004;19(Suppl):43–61; Esposito M et al. COIR 1993;4:151–7',
  'source.buser-2004-cej': 'Buser D et al. IJOMI 2004;19(Suppl):43–61',
  'source.margin-2-4': '2–4 mm, consensus texts; the split is a proposal of this project',
  'source.linkevicius-2011':
    'Linkevicius T et al. 2011, doi 10.1111/j.1600-0501.2010.02119.x; the split is a proposal of this project',
  'source.tarnow-1992':
    'Tarnow DP, Magner AW, Fletcher P. J Periodontol 1992;63:995–6; Choquet V et al. J Periodontol 2001;72:1364–71',
  'source.angled-channel-25': 'angled channels in use up to 25°: Atieh MA et al. J Esthet Restor Dent 2025',
  'source.katafuchi-2018':
    'Katafuchi M et al. J Clin Periodontol 2018;45:225–32; beyond 40° is a proposal of this project',
  'source.carpentieri-2019':
    'Carpentieri J et al. JADA 2019;150:695–706; Misch CE et al. Implant Dent 2005;14:312–21',
  'source.ours-last-drill': 'a rule of this project; common practice, no source',
  'source.camargo-2017': 'Camargo BA et al. Braz J Oral Sci 2017;15:201–4',
  'source.eriksson-1983': 'Eriksson AR, Albrektsson T. J Prosthet Dent 1983;50:101–7',
  'source.weigl-2018':
    'Weigl P et al. J Adv Prosthodont 2018;10:79–84 (0.5 mm survived, 0.2 mm failed where it was cemented)',
  'source.yu-2017': 'Yu T et al. RSC Adv 2017;7:25542 (1.0 to 1.2 mm)',
  'source.common-practice': 'common practice, no source',
  'source.ours-crown': 'a proposal of this project',
  'source.ours-geometry': 'follows from the geometry of this model',
  'source.chappuis-2013': 'Chappuis V et al. J Dent Res 2013;92:195S–201S (fresh sockets)',
  'source.botticelli-2004': 'Botticelli D et al. 2004; consensus texts',
  'source.fuerhauser-2015': 'Fürhauser R et al. COIR 2015;26:1427–33',
  'source.abduo-2020': 'Abduo J, Lau D. Int J Implant Dent 2020, doi 10.1186/s40729-020-0205-3',
  'source.students-2019': '52 undergraduates, 104 implants, doi 10.1186/s40729-019-0176-4',
  'source.guentsch-2022': 'Guentsch A et al. J Prosthet Dent 2022',
  'source.younes-2018': 'Younes F et al. J Clin Periodontol 2018;45:721–32',
  'source.varga-2020': 'Varga E Jr et al. COIR 2020;31:417–30',
  'source.smitkarn-2019': 'Smitkarn P et al. J Clin Periodontol 2019;46:949–57',
  'source.tapered-2021': 'tapered body, 20 implants, doi 10.1186/s40729-021-00320-3',
  'source.tahmaseb-2018': 'Tahmaseb A et al. COIR 2018;29(S16):416–35 (20 studies)',
  'source.own': 'set in this plan',
  'source.assumed': 'assumed',
  'source.ducommun-2019': 'Ducommun J et al. Clin Oral Investig 2019;23:2253–63',
  'source.zhang-2015': 'Zhang W et al. BMC Oral Health 2015;15:65',
  'source.tooth-to-ridge-2021': 'doi 10.1186/s12903-021-01848-x',
  'source.munakata-2021': 'Munakata M et al. Int J Implant Dent 2021',
  'source.kan-2011': 'Kan JYK et al. IJOMI 2011;26:873–6',
  'source.heimes-2021': 'Heimes D et al. Healthcare 2021;9:1663',
  'source.yang-2020': 'Yang G et al. PeerJ 2020',
  'source.kan-2010': 'Kan JYK et al. IJPRD 2010;30:237–43',
  'source.canal-300': 'n = 300, doi 10.4103/jips.jips_167_18',
  'source.brunelle-1996': 'Brunelle JA et al. J Dent Res 1996;75:706–13',
  'source.januario-2011': 'Januario AL et al. COIR 2011;22:1168–71',
  'source.nelson-ash-table-1-1': 'Nelson SJ, Ash MM. Wheeler’s Dental Anatomy, Table 1-1',
  'source.tong-2012': 'Tong H et al. AJODO 2012;141:604–17',
  'source.andrews-1989': 'Andrews LF. Straight Wire, 1989',
} as const;
