import { startBench, openPage, openDemo } from './builtPage.ts';
const bench=await startBench('/tmp/invdist');
try {
const {page,complaints,close}=await openPage(bench,{viewport:{width:1400,height:1000}});
page.setDefaultTimeout(8000);
await openDemo(page); await page.waitForTimeout(3000);
const pane=page.locator('#pane');
const open=async(t:string)=>{const s=pane.locator('details.foldedPart > summary').filter({has:page.getByRole('heading',{name:t,exact:true})}); if(!(await s.evaluate((e:any)=>e.parentElement.open))) await s.click();};
const shot=(n:string)=>page.screenshot({path:`/tmp/inv/${n}.png`});
const notice=()=>pane.locator('.notice').innerText();
// decision
await pane.locator('details.cause').filter({hasText:'code reads two ways'}).locator('summary').click();
await shot('check-open');
await pane.locator('details.cause').filter({hasText:'code reads two ways'}).locator('.examples button').first().click();
await page.waitForTimeout(500); await shot('check-selected');
await pane.getByRole('button',{name:/Read codes of maker 7ZZ91 as/}).first().click(); await page.waitForTimeout(1500);
console.log('decided; still?', await pane.locator('details.cause').filter({hasText:'code reads two ways'}).count());
await pane.getByRole('button',{name:'Write rows to check'}).click(); await page.waitForTimeout(500); await shot('home-question');
await pane.getByRole('button',{name:'Into this workbook'}).click(); await page.waitForTimeout(3000); console.log('checks:',await notice()); await shot('checks-written');
await page.getByText('Inventory',{exact:true}).first().click().catch(()=>0);
await open('Fill columns'); await shot('fill');
for (const k of ['Date made','Months in service','State of charge','Verdict','Chance of failing in 12 months']) await pane.getByLabel(k,{exact:true}).check();
await pane.getByLabel('beside the block, at its right').check();
let t=Date.now(); await pane.getByRole('button',{name:'Fill',exact:true}).click();
await pane.locator('.notice.done, .notice.problem, section[aria-labelledby=question]').first().waitFor({timeout:60000}).catch(()=>0); console.log('fill',Date.now()-t, await notice(), await pane.locator('section[aria-labelledby=question]').allInnerTexts());
await page.waitForTimeout(1500); await shot('filled');
t=Date.now(); await pane.getByRole('button',{name:'Fill',exact:true}).click(); await page.waitForTimeout(4000); console.log(await notice(), await pane.locator('section[aria-labelledby=question]').allInnerTexts()); await shot('refill');
await pane.getByRole('button',{name:'Write over them'}).click().catch((e)=>console.log('no overwrite')); await page.waitForTimeout(6000); console.log(await notice());
await pane.getByLabel('on a new sheet, by serial (values)').check(); await pane.getByRole('button',{name:'Fill',exact:true}).click(); await page.waitForTimeout(5000); console.log(await notice()); await shot('newsheet');
console.log(complaints);
await close();
} finally { await bench.stop(); }
